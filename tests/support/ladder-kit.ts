import { type StudDevice, studKit } from './stud-kit.ts';

/** What differs between two kits of {@link ladderKit}. */
export interface Ladder {
  readonly rungs: number;
  /**
   * Where the lamps return to: each to the ground stud; two of three over one wire; two neighbours over a wire of
   * their own; or each over the return of the next, so that every one of them may open.
   */
  readonly returns: 'ground' | 'one wire' | 'in pairs' | 'in a row';
  /** Wires of the harness that the kit leaves alone, four for each switch with its lamp. */
  readonly untouchedWires?: number;
  /** Whether lengths, capacities and limits are said, so that losses are judged too. */
  readonly limits?: boolean;
}

/**
 * A kit that makes one part of many switches: a switch and a lamp for each node, and diodes that the kit puts between
 * neighbours, so that each lamp is also fed by the switches before its own.
 */
export function ladderKit({ rungs, returns, untouchedWires = 0, limits = false }: Ladder): string {
  const nets: string[] = [];
  const stock: StudDevice[] = [];
  const kit: StudDevice[] = [];
  const wires: (readonly [string, string, string])[] = [];
  const shared = (index: number): string => {
    if (returns === 'in pairs') return `G${index >> 1}`;
    if (returns === 'in a row') return `G${index}`;
    return returns === 'one wire' && index % 3 > 0 ? 'G' : 'GND';
  };
  const behind = (index: number): string =>
    returns === 'in a row' && index + 1 < rungs ? `G${index + 1}` : 'GND';
  const made = new Set(['GND']);
  for (let index = 0; index < rungs; index += 1) {
    const common = shared(index);
    nets.push(`N${index}`);
    if (!made.has(common)) {
      made.add(common);
      nets.push(common);
      wires.push([`return ${common}`, common, behind(index)]);
    }
    stock.push(['switch', `S${index}`, 'BAT', `N${index}`]);
    stock.push(['load', `L${index}`, `N${index}`, common, `resistance: ${20 + index} ohm`]);
    if (index > 0) kit.push(['diode', `D${index}`, `N${index - 1}`, `N${index}`, 'drop: 0.4 V']);
  }
  for (let index = 0; index < untouchedWires / 4; index += 1) {
    nets.push(`U${index}`);
    stock.push(['switch', `T${index}`, 'BAT', `U${index}`]);
    stock.push(['load', `V${index}`, `U${index}`, 'GND', 'resistance: 9 ohm']);
  }
  const said = {
    ofWires: 'length: 1 m, capacity: 20 A',
    sections: [
      'electrical: { limits: own, own limits: { source: the bench, drop: 10 %, lead to protector: 9 m }, material: copper, strands: formula, temperature: 20 C, joints: 1 mohm }',
    ],
  };
  return studKit({ nets, stock, wires, kit, ...(limits ? said : {}) });
}
