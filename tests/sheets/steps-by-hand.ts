/*
 * The steps of two kits as a person wrote them from the kit files, with the places at which each is done: address, how far
 * from it, and where that is with the wires toward the person.
 */

/** The van's, early build; serpentine rows of six, 1 to 6 above, 12 to 7 below. */
export const vanSteps: readonly string[] = [
  '1 Disconnect battery.',
  '2 Prove K10:4 dead. | K10:4 = row 1 from the top, 4th from the left, wires toward you, latch on top; right neighbour empty, left neighbour a wire BN (0.5 mm2)',
  '3 Open the position latch of K10.',
  '4 Unplug K10.',
  '5 Cut buzzer, which leaves buzzer stub and buzzer far. | K10:4, 80 mm from it = row 1 from the top, 4th from the left, wires toward you, latch on top; right neighbour empty, left neighbour a wire BN (0.5 mm2)',
  '6 Cover buzzer stub@buzzer far with CAP-W.',
  '7 Cover buzzer far@buzzer stub with CAP-W.',
  '8 Tie back buzzer stub@buzzer far with TIE.',
  '9 Tie back buzzer far@buzzer stub with TIE.',
  '10 Tap ajar for beacon feed@A with TAP-M as TAP1. | K10:9, 120 mm from it = row 2 from the top, 4th from the left, wires toward you, latch on top; right neighbour empty, left neighbour empty',
  '11 Open the secondary lock of K10.',
  '12 Insert beacon return@K10 end into K10:6. | K10:6 = row 1 from the top, 6th from the left, wires toward you, latch on top; no right neighbour, left neighbour empty',
  '13 Close the secondary lock of K10.',
  '14 Plug K10.',
  '15 Close the position latch of K10.',
  '16 Put BC in its place.',
  '17 Plug K20.',
  '18 Reconnect battery.',
];

const boatC =
  'row 1 from the top, 3rd from the left, wires toward you, latch on top; no right neighbour, left neighbour a wire RD (2.5 mm2)';
const boat3 =
  'row 1 from the top, 2nd from the left, wires toward you, key on top; no right neighbour, left neighbour a wire RD (2.5 mm2)';

/** The boat's; K20 has A B C above, K25 counts down its columns. */
export const boatSteps: readonly string[] = [
  '1 Disconnect house bank.',
  '2 Disconnect engine bank.',
  '3 Prove BH dead. | BH = a stud, on it now a wire RD/YE (1.5 mm2)',
  '4 Prove K25:1 dead. | K25:1 = row 1 from the top, 1st from the left, wires toward you, key on top; right neighbour a plug, no left neighbour',
  '5 Open the position latch of K20.',
  '6 Unplug K20.',
  `7 Cut anchor feed, which leaves anchor tail and anchor run. | K20:C, 60 mm from it = ${boatC}`,
  '8 Open the secondary lock of K20.',
  `9 Withdraw the terminal from K20:C. | K20:C = ${boatC}`,
  '10 Remove the off-cut anchor tail.',
  '11 Slide TUBE-W over anchor run@anchor tail.',
  '12 Strip anchor run@anchor tail.',
  '13 Strip anchor extension@A.',
  '14 Join anchor run@anchor tail and anchor extension@A with SP-W as SP1.',
  '15 Seal SP1.',
  `16 Insert alarm feed@panel end into K20:C. | K20:C = ${boatC}`,
  '17 Close the secondary lock of K20.',
  '18 Plug K20.',
  '19 Close the position latch of K20.',
  '20 Unplug K25.',
  '21 Open the secondary lock of K25.',
  `22 Remove the plug from K25:3. | K25:3 = ${boat3}`,
  `23 Insert anchor extension@K25 end into K25:3. | K25:3 = ${boat3}`,
  '24 Close the secondary lock of K25.',
  '25 Plug K25.',
  '26 Detach alarm old@BH.',
  '27 Cut alarm old, which leaves ring tail and old run. | BH, 30 mm from the end that was there = a stud, no wire on it now',
  '28 Remove the off-cut ring tail.',
  '29 Cover old run@ring tail with CAP-W.',
  '30 Tie back old run@ring tail with TIE.',
  '31 Unplug K21.',
  '32 Cut sense, which leaves old sense and float tail. | K22:1, 100 mm from it = the only row, 1st from the left, wires toward you, latch on top; right neighbour a wire BK (1.5 mm2), no left neighbour',
  '33 Cover old sense@float tail with CAP-W.',
  '34 Tie back old sense@float tail with TIE.',
  '35 Slide TUBE-W over alarm sense@S.',
  '36 Strip alarm sense@S.',
  '37 Strip float tail@old sense.',
  '38 Join float tail@old sense and alarm sense@S with SP-W as SP2.',
  '39 Seal SP2.',
  '40 Put AN in its place.',
  '41 Plug K23.',
  '42 Fasten alarm feed with TIE.',
  '43 Reconnect engine bank.',
  '44 Reconnect house bank.',
];
