import { describe, expect, it } from 'vitest';
import type { Face } from './face.ts';
import type { FaceForm } from './face-schema.ts';
import { facingLabels } from './facing-labels.ts';
import { misreadings } from './misreadings.ts';
import { neighbours } from './neighbours.ts';
import { parsePlace } from './parse-place.ts';
import { placeInWords } from './place-in-words.ts';
import { readFace } from './read-face.ts';
import { viewFrom } from './view-from.ts';
import { writeFace } from './write-face.ts';

function faceOf(form: FaceForm, cavities?: readonly string[]): Face {
  const { value, problems } = readFace(form, cavities);
  expect(problems).toEqual([]);
  if (value === null) throw new Error('no face');
  return value;
}

function seen(face: Face, side: 'wire side' | 'mating side'): unknown {
  const { written, round } = writeFace(viewFrom(face, side));
  return written ?? round;
}

function sameLabelsFace(one: Face, other: Face): void {
  const facing = facingLabels(one, other);
  expect(facing.size).toBe(one.rows.flat().length);
  for (const [own, met] of facing) expect(met).toBe(own);
}

/*
 * Modular plug and jack of TIA-568 links (8P8C). Order seen from each end: "Ethernet CAT5 Cheat Sheet",
 * http://rgrjr.com/linux/ether.html (jack, contacts up: 1 to 8; plug end, contacts up: 8 to 1; plug from the cable end,
 * contacts up: 1 to 8), and "How to wire an Ethernet plug", http://www.ehow.co.uk/how_5955875_wire-ethernet-plug.html
 * (tab to the floor, cable end toward you: the leftmost is 1). Colours of T568B: user guide appendix "Cabling
 * guidelines", https://manualsdump.com/en/manuals/kingston_technology-kns1600/139941/16. The standard itself not seen.
 */
describe('8P8C plug and jack', () => {
  const plug = faceOf({ 'seen from': 'wire side', latch: 'bottom', rows: '1', columns: '8' });
  const jack = faceOf({ 'seen from': 'mating side', latch: 'bottom', written: '1 2 3 4 5 6 7 8' });
  const colours = new Map([
    ['1', 'white/orange'],
    ['2', 'orange'],
    ['3', 'white/green'],
    ['4', 'blue'],
    ['5', 'white/blue'],
    ['6', 'green'],
    ['7', 'white/brown'],
    ['8', 'brown'],
  ]);

  it('shows the plug end in reverse order', () => {
    expect(seen(plug, 'mating side')).toEqual(['8 7 6 5 4 3 2 1']);
  });

  it('faces like numbers when plugged', () => {
    sameLabelsFace(plug, jack);
    sameLabelsFace(jack, plug);
  });

  it('says the place of contact 3 with the colours of T568B', () => {
    expect(placeInWords(plug, '3', 'wire side', (label) => colours.get(label) ?? '')).toBe(
      'the only row, 3rd from the left, wires toward you, latch at the bottom; right neighbour blue, left neighbour orange',
    );
    expect(placeInWords(plug, '3', 'mating side')).toBe(
      'the only row, 6th from the left, mating face toward you, latch at the bottom',
    );
  });
});

/*
 * Nine and fifteen contacts in two staggered rows, wide side of the shell up, seen on the contacts. DE-9 plug and DA-15
 * socket: https://sput.nl/hardware/data-cables.html. DE-9 socket beside plug: comp.sys.apple2 FAQ resource file
 * R023PINOUTS.TXT, https://mirrors.apple2.org.za/ground.icaen.uiowa.edu/Faqs/R023PINOUTS.TXT.
 */
describe('D-subminiature', () => {
  const plug = faceOf({ 'seen from': 'mating side', key: 'top', written: ['1 2 3 4 5', '. 6 7 8 9'] });
  const socket = faceOf({ 'seen from': 'mating side', key: 'top', written: ['5 4 3 2 1', '. 9 8 7 6'] });

  it('faces like numbers when plugged', () => {
    sameLabelsFace(plug, socket);
  });

  it('shows the plug from its wire side as the socket is drawn', () => {
    expect(seen(plug, 'wire side')).toEqual(writeFace(socket).written);
  });

  it('counts two blocks of unequal rows from the right', () => {
    const da15 = faceOf({
      'seen from': 'mating side',
      key: 'top',
      written: ['8 7 6 5 4 3 2 1', '. 15 14 13 12 11 10 9'],
    });
    expect(placeInWords(da15, '9', 'mating side')).toBe(
      'row 2 from the top, 7th from the left, mating face toward you, key on top',
    );
    expect(neighbours(da15, '9', 'mating side')).toEqual([
      { direction: 'left', label: '10', blocked: false },
      { direction: 'above left', label: '2', blocked: false },
      { direction: 'above right', label: '1', blocked: false },
    ]);
  });
});

/*
 * Ribbon cable connector, one column odd and the other even, and the same connector as numbered on printed boards:
 * https://sput.nl/hardware/data-cables.html. The side with contact 1 is taken as key.
 */
describe('two-row ribbon cable connector', () => {
  const oneColumnOdd = ['1 2', '3 4', '5 6', '7 8', '9 10', '11 12', '13 14', '15 16'];
  const oneColumnFirst = ['1 9', '2 10', '3 11', '4 12', '5 13', '6 14', '7 15', '8 16'];

  it('is numbered row by row, and the cable half from the other corner', () => {
    const male = faceOf({ 'seen from': 'mating side', key: 'left', rows: '5', columns: '2' });
    const female = faceOf({
      'seen from': 'mating side',
      key: 'right',
      rows: '5',
      columns: '2',
      start: 'top right',
    });
    expect(seen(male, 'mating side')).toEqual(['1 2', '3 4', '5 6', '7 8', '9 10']);
    expect(seen(female, 'mating side')).toEqual(['2 1', '4 3', '6 5', '8 7', '10 9']);
    sameLabelsFace(male, female);
  });

  it('has odd and even rows when it lies on its side', () => {
    const face = faceOf({
      'seen from': 'mating side',
      key: 'bottom',
      rows: '2',
      columns: '5',
      count: 'odd and even rows',
    });
    expect(seen(face, 'mating side')).toEqual(['1 3 5 7 9', '2 4 6 8 10']);
  });

  it('is misread column by column as printed boards number it', () => {
    const face = faceOf({ 'seen from': 'mating side', key: 'left', rows: '8', columns: '2' });
    expect(seen(face, 'mating side')).toEqual(oneColumnOdd);
    const misread = misreadings(face).find(({ kind }) => kind === 'column by column');
    const byHand = new Map<string, string>();
    for (const [row, text] of oneColumnFirst.entries()) {
      const own = oneColumnOdd[row]?.split(' ') ?? [];
      for (const [place, label] of text.split(' ').entries()) byHand.set(label, own[place] ?? '');
    }
    expect(misread?.cavities.size).toBe(16);
    for (const [label, hit] of misread?.cavities ?? []) expect(hit).toBe(byHand.get(label));
  });
});

/*
 * "OBD-II Connector Pinout", https://www.softechpro-solutions.com/obd-connector-pinout.html: looking into the vehicle's
 * socket, contact 1 top left. Two rows of eight: https://www.setolink.com/definitions-for-obd-connector-pinout. Pairs by
 * function: https://dashlogic.com/docs/technical/obdii_connector_pinout. That the wide side is up: from memory.
 */
describe('SAE J1962 diagnostic socket', () => {
  const socket = faceOf({ 'seen from': 'mating side', key: 'top', rows: '2', columns: '8' });

  it('has both lines of each bus one above the other', () => {
    for (const [high, low] of [
      ['2', '10'],
      ['6', '14'],
      ['7', '15'],
    ] as const) {
      expect(neighbours(socket, high, 'mating side')).toContainEqual({
        direction: 'below',
        label: low,
        blocked: false,
      });
    }
  });

  it('shows contact 16, always live, at the left when seen from the wires', () => {
    expect(placeInWords(socket, '16', 'wire side')).toBe(
      'row 2 from the top, 1st from the left, wires toward you, key on top',
    );
  });
});

/*
 * "Electronics: Integrated Circuit (IC) Pinouts",
 * https://www.dummies.com/programming/electronics/electronics-integrated-circuit-ic-pinouts/: with the notch at
 * 12 o'clock 1 to 7 down the left side and 8 to 14 up the right.
 */
it('numbers a dual in-line package as serpentine columns', () => {
  const face = faceOf({
    'seen from': 'wire side',
    key: 'top',
    rows: '7',
    columns: '2',
    count: 'serpentine columns',
  });
  expect(seen(face, 'wire side')).toEqual(['1 14', '2 13', '3 12', '4 11', '5 10', '6 9', '7 8']);
});

/*
 * DIN 41612 with rows a, b and c of 32, as placed by the public footprint stdlib/connector/DIN/DIN_41_612-MALE-abc.fp of
 * https://github.com/bert/pcb (commit 729e787b): row c at the upper edge, row a at the lower, 1 at the right. It is a
 * view on the board, so nothing is said here of the side.
 */
it('numbers DIN 41612 with a row letter and a column number', () => {
  const face = faceOf({
    'seen from': 'wire side',
    key: 'bottom',
    rows: '3',
    columns: '32',
    labels: 'row letters',
    first: 'a1',
    start: 'bottom right',
  });
  const pitch = 100;
  for (const [row, y] of [
    ['c', 100],
    ['b', 200],
    ['a', 300],
  ] as const) {
    for (let number = 1; number <= 32; number += 1) {
      const x = 3500 - (number - 1) * pitch;
      const position = face.rows[y / pitch - 1]?.[(x - 400) / pitch];
      expect(position?.label).toBe(`${row}${number}`);
    }
  }
});

/*
 * ISO 1724 socket (12N), places in words as seen from the plug side: "Trailer Socket",
 * http://www.kfz-tech.de/Engl/Biblio/Beleuchtung/AnhSteckd.htm: 1 at the top, 2 above right, 3 bottom right, 4 bottom,
 * 5 bottom left, 6 above left, 7 in the centre. `12 o'clock` stands for its top; where the key is was not found.
 */
describe('ISO 1724 socket', () => {
  const socket = faceOf({ 'seen from': 'mating side', rings: ['6 from 12', '1 in centre'] });

  it('runs clockwise from the top with 7 in the centre', () => {
    expect(seen(socket, 'mating side')).toEqual(['1@12 2@2 3@4 4@6 5@8 6@10', '7@centre']);
  });

  it('runs anticlockwise from the wire side', () => {
    expect(seen(socket, 'wire side')).toEqual(['1@12 6@2 5@4 4@6 3@8 2@10', '7@centre']);
  });

  it('exchanges stop lamps and fog lamp, and the return and the right tail lamp, when mirrored', () => {
    const mirrored = misreadings(socket).find(({ kind }) => kind === 'mirrored');
    expect([...(mirrored?.cavities ?? [])]).toEqual([
      ['1', '1'],
      ['2', '6'],
      ['3', '5'],
      ['4', '4'],
      ['5', '3'],
      ['6', '2'],
      ['7', '7'],
    ]);
  });
});

/*
 * ISO 11446-1 has contacts 1 to 13 (contact plan: https://www.trailerbest.com/new/european-13pin-Contact-allocation.html).
 * No text that gives their places was found, so the rings below are made up and nothing is claimed of them. What is
 * published and checked: one plan serves for the socket seen from the plug and for the plug seen from its screws,
 * https://de.zxc.wiki/wiki/Jaegerstecker.
 */
describe('ISO 11446 plug and socket, with made-up rings', () => {
  const contacts = Array.from({ length: 13 }, (_, index) => String(index + 1));
  const rings = ['8 from 12:30', '5 from 1'];
  const socket = faceOf({ 'seen from': 'mating side', rings }, contacts);
  const plug = faceOf({ 'seen from': 'wire side', rings }, contacts);

  it('faces like numbers when one plan serves for both', () => {
    sameLabelsFace(socket, plug);
  });

  it('gives each contact one place in words', () => {
    const places = contacts.map((contact) => placeInWords(plug, contact, 'wire side'));
    expect(new Set(places).size).toBe(13);
    expect(places.map((words) => parsePlace(words, plug))).toEqual(contacts);
  });
});

/*
 * Light-vehicle 7-way blade, looking into the vehicle socket, notch at the top: clock positions from one answer page,
 * https://www.elektroda.com/qa,7-pin-trailer-connector-wiring.html (practice, no standard).
 */
it('reads the 7-way blade socket from behind with left and right exchanged', () => {
  const socket = faceOf({
    'seen from': 'mating side',
    round: ['charge@1 right@3 brakes@5 ground@7 left@9 tail@11', 'reverse@centre'],
  });
  expect(placeInWords(socket, 'left', 'wire side')).toBe("at 3 o'clock, wires toward you, key at 12 o'clock");
  expect(placeInWords(socket, 'reverse', 'wire side')).toBe(
    "in the centre, wires toward you, key at 12 o'clock",
  );
  expect(parsePlace("at 3 o'clock, mating face toward you, key at 12 o'clock", socket)).toBe('right');
});

/*
 * Twelve contacts A to N without G and I: STANAG 4007, Wikipedia "Trailer connectors in military organizations",
 * https://en.wikipedia.org/wiki/Trailer_connectors_in_military_organizations. Only the letters are published there.
 */
it('letters the contacts of STANAG 4007', () => {
  const letters = [...'ABCDEFHJKLMN'];
  const face = faceOf(
    { 'seen from': 'mating side', rings: '12 from 12', labels: 'letters', skip: 'G I' },
    letters,
  );
  expect(face.rows.flat().map(({ label }) => label)).toEqual(letters);
});
