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
  ['Outer diameter', 'insulation'],
  ['Zone', 'zone'],
  ['bends in use', 'flex'],
  ['strip length from', 'from_strip'],
  ['to cap', 'to_cover'],
  ['conductor material', 'material'],
  ['stranding', 'strands'],
  ['temperature rating', 'insulation_rating'],
])('the head %j is column %s, without unit', (head, column) => {
  expect(columnOfHeader(head)).toEqual({ column, unit: null });
});

test.each([
  ['AWG', 'size', 'awg'],
  ['mm²', 'size', 'mm2'],
  ['Size [mm^2]', 'size', 'mm2'],
  ['wire gauge (AWG)', 'size', 'awg'],
  ['cross section sq.mm', 'size', 'mm2'],
  ['Length (mm)', 'length', 'mm'],
  ['cut length/in', 'length', 'in'],
  ['Insulation OD [mm]', 'insulation', 'mm'],
  ['from strip (inch)', 'from_strip', 'in'],
  ['Temp. [°C]', 'temperature', 'C'],
  ['insulation rating (deg C)', 'insulation_rating', 'C'],
  ['Ampacity/A', 'capacity', 'A'],
])('the head %j is column %s and gives the unit', (head, column, unit) => {
  expect(columnOfHeader(head)).toEqual({ column, unit });
});

test.each(['', 'contact', 'from contact', '__proto__', 'constructor', 'price', 'size kg', 'awg mm2'])(
  'the head %j is not known',
  (head) => {
    expect(columnOfHeader(head)).toBeNull();
  },
);
