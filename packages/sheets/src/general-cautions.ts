/**
 * Cautions that hold for every kit. They are put in this program's own words and defer to whoever knows the machine.
 * The rules behind them: service literature of vehicle makers and meter makers, common practice where none is named.
 */
export const generalCautions: readonly string[] = [
  "The machine maker's service information, the rules of the place you work in, and a licence where one is needed come before this sheet. Where they differ from it, stop and ask.",
  'Airbags and belt tensioners can fire after power is off. Do not probe, cut, join or measure their wires; follow the maker only. Yellow sleeving is a hint, and not the only mark.',
  'Orange cables carry high voltage. They, and what is joined to them, are no part of this work. Stop there.',
  'Stop lamps, steering, brakes, safety loops and data wires are not places to take a signal from, even if the voltage suits: what suffers may be far away.',
  'Where gas, fuel or oxygen may be, use no flame and no hot-air tool; fit only parts made for such a place.',
  'An insulation test with high voltage is for a bare harness only, with no module, surge part or meter on it.',
];

/** Cautions by the kind of step that they stand before. */
export function cautionsBefore(kind: string, sealed: boolean): readonly string[] {
  switch (kind) {
    case 'disconnect':
      return [
        'Agree first what may lose power: memories, alarm, radio code, a fridge with medicine, a bilge pump.',
        'A switch is not enough: take the fuse at the source or the battery lead off. A second battery, solar panels and a shore charger are sources too.',
      ];
    case 'prove dead':
      return [
        'Use a meter of at least 10 megohms; a test lamp or a tester with its own supply can destroy a module.',
        sealed
          ? 'Do not push a probe past a seal and do not pierce insulation: both let water in. A pierced wire is repaired and written down.'
          : 'Do not pierce insulation. A pierced wire is repaired and written down.',
      ];
    case 'cut':
      return ['A cut is for good. Find the wire by its cavity; its colour only confirms.'];
    case 'tap':
      return [
        'A tap on the wrong wire can disturb something far away. Find the wire by its cavity; its colour only confirms.',
      ];
    case 'seal':
      return ['Look at the crimp before you shrink the tube: afterwards it is hidden.'];
    case 'fit jumper':
      return ['Write down every jumper that goes in. The same number must come out before power.'];
    case 'reconnect':
      return ['Power it first through a lamp or a small fuse in line, and only then with the right fuse.'];
    default:
      return [];
  }
}
