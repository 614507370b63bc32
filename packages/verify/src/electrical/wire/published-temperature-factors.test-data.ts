/**
 * Factors that bring a resistance measured at a temperature to 20 degrees Celsius: degrees, factor. Source:
 * "Copper conductors according to IEC 60228", uecables.com.
 */
export const publishedTemperatureFactors: readonly (readonly [celsius: number, factor: number])[] = [
  [5, 1.064],
  [10, 1.042],
  [15, 1.02],
  [20, 1.0],
  [25, 0.98],
  [30, 0.962],
  [35, 0.943],
  [40, 0.926],
  [45, 0.909],
  [50, 0.893],
  [55, 0.877],
  [60, 0.862],
  [65, 0.847],
  [70, 0.833],
  [75, 0.82],
  [80, 0.806],
  [85, 0.794],
  [90, 0.781],
  [95, 0.769],
  [100, 0.758],
];
