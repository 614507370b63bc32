import { expect, test } from 'vitest';
import { quoteText } from './quote-text.ts';

test('a short text is quoted whole', () => {
  expect(quoteText('X1')).toBe('`X1`');
  expect(quoteText('')).toBe('``');
});

test('a text of exactly sixty characters is quoted whole and a longer one is cut', () => {
  expect(quoteText('a'.repeat(60))).toBe(`\`${'a'.repeat(60)}\``);
  expect(quoteText('a'.repeat(61))).toBe(`\`${'a'.repeat(60)}…\``);
  expect(quoteText('😀'.repeat(61))).toBe(`\`${'😀'.repeat(60)}…\``);
});

test('nothing hidden is quoted raw', () => {
  expect(quoteText('a\u001bb')).toBe('`a\\u{1b}b`');
});
