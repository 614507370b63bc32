import { expect, test } from 'vitest';
import { columnOfHeader } from './column-of-header.ts';

test.each([
  ['wire', 'wire'],
  ['Wire No.', 'wire'],
  ['FROM_CONNECTOR', 'from_connector'],
  ['from pin', 'from_cavity'],
  ['Pin (to)', 'to_cavity'],
  ['To-Cav.', 'to_cavity'],
  ['from', 'from'],
  ['to', 'to'],
  ['Color', 'colour'],
  ['wire  colour', 'colour'],
  ['gauge', 'size'],
  ['cross-section', 'size'],
  ['from seal', 'from_seal'],
  ['terminal to', 'to_terminal'],
  ['Remarks', 'note'],
  ['signal', 'function'],
  ['option', 'variant'],
])('the head %j is column %s, without unit', (head, column) => {
  expect(columnOfHeader(head)).toEqual({ column, sizeUnit: null, lengthUnit: null });
});

test.each([
  ['AWG', 'size', 'awg', null],
  ['mm²', 'size', 'mm2', null],
  ['Size [mm^2]', 'size', 'mm2', null],
  ['wire gauge (AWG)', 'size', 'awg', null],
  ['cross section sq.mm', 'size', 'mm2', null],
  ['Length (mm)', 'length', null, 'mm'],
  ['cut length/in', 'length', null, 'in'],
])('the head %j is column %s and gives the unit', (head, column, sizeUnit, lengthUnit) => {
  expect(columnOfHeader(head)).toEqual({ column, sizeUnit, lengthUnit });
});

test.each(['', 'contact', 'from contact', '__proto__', 'constructor', 'price', 'size kg', 'awg mm2'])(
  'the head %j is not known',
  (head) => {
    expect(columnOfHeader(head)).toBeNull();
  },
);
