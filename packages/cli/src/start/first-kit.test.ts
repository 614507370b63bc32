import { readPinTable } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { type FirstKit, firstKit } from './first-kit.ts';

function kitOf(...rows: readonly string[]): FirstKit {
  const text = ['wire;from;to;from_terminal;to_seal;variant', ...rows].join('\n');
  const { value, diagnostics } = readPinTable({ name: 't.csv', text });
  expect(diagnostics).toEqual([]);
  if (value === null) throw new Error('the table cannot be read');
  const first = firstKit(value, { studs: ['G10', 'G2', 'G2'], splices: [] });
  expect(first.diagnostics).toEqual([]);
  return first.value;
}

describe('firstKit', () => {
  it('lists connectors and labels once each, in the order in which a person counts', () => {
    const { connectors, studs } = kitOf('a;K10:10;K2:1;;;', 'b;K10:2;K2:01;;;', 'c;K10:A;K2:1;;;');
    expect([...connectors]).toEqual([
      ['K2', ['01', '1']],
      ['K10', ['2', '10', 'A']],
    ]);
    expect(studs).toEqual(['G2', 'G10']);
  });

  it('lists what covers loose ends, which are in no connector', () => {
    const text = 'wire;from;to;to_cover\na;K1:1;loose:A;CAP\nb;K1:2;loose:A;none\n';
    const { value } = readPinTable({ name: 't.csv', text });
    if (value === null) throw new Error('the table cannot be read');
    const first = firstKit(value, { studs: [], splices: [] }).value;
    expect([...first.connectors]).toEqual([['K1', ['1', '2']]]);
    expect(first.covers).toEqual(['CAP']);
  });

  it('lists terminals, seals and the axes of variants', () => {
    const { terminals, seals, axes } = kitOf(
      'a;K1:1;K2:1;T-2;S-1;side=left',
      'b;K1:2;K2:2;T-10;S-1;side=right roof=high|low',
    );
    expect([terminals, seals]).toEqual([['T-2', 'T-10'], ['S-1']]);
    expect([...axes]).toEqual([
      ['roof', ['high', 'low']],
      ['side', ['left', 'right']],
    ]);
  });
});
