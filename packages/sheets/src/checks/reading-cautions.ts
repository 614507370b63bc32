/** What is said before any reading is taken; it defers to whoever knows the machine. */
export const readingCautions: readonly string[] = [
  'Every source off and proved dead before the first reading; a meter in ohms on a live circuit is damaged.',
  'Never probe airbag, belt-tensioner or high-voltage circuits. Do not pierce insulation.',
  'No lamp-type or self-powered tester at module pins. A test pin that does not fit spreads the contact: the test makes the fault.',
  'Take the first reading as found, before anything is moved; read again while the bundle is moved.',
  'Zero the leads, write down the zero. Give the number, not the beep.',
  "The machine maker's service information, local rules and licensed practice come first.",
  'Nothing may be powered while a reading of this list is not done, not reachable or between the limits.',
];
