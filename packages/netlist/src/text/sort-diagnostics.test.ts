import { expect, test } from 'vitest';
import { makeDiagnostic } from './make-diagnostic.ts';
import { sortDiagnostics } from './sort-diagnostics.ts';

function at(name: string, start: number, code: string, message = ''): ReturnType<typeof makeDiagnostic> {
  return makeDiagnostic({ code, message, span: { source: { name, text: '' }, start, end: start } });
}

test('those without place come first, then source name, offset and code decide, and equals keep their order', () => {
  const none = makeDiagnostic({ code: 'Z', message: '' });
  const ordered = [
    none,
    at('B', 9, 'C'),
    at('a', 2, 'C'),
    at('a', 10, 'A'),
    at('a', 10, 'B', '1'),
    at('a', 10, 'B', '2'),
  ];
  const [, b, a2, a10A, first, second] = ordered;
  expect(sortDiagnostics([first, a10A, b, second, none, a2].filter((one) => one !== undefined))).toEqual(
    ordered,
  );
});
