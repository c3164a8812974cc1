import { expect, test } from 'vitest';
import { workingIn } from '../../views/parts/workingIn.ts';

// Inches by hand: each figure over 25.4, one decimal more.
test.each([
  ['k = 0.028 − (−0.223) = 0.251 mm', 'k = 0.0011 − (−0.0088) = 0.0099 in'],
  ['maker 4.801 mm, shop none: 4.801 mm', 'maker 0.1890 in, shop none: 0.1890 in'],
  ['station 8: 5.424 mm − 0.216 mm = 5.208 mm', 'station 8: 0.2135 in − 0.0085 in = 0.2050 in'],
  ['b = (13.41 − 10.31)/2 = 1.55 mm', 'b = (0.528 − 0.406)/2 = 0.061 in'],
  [
    'tilt 0.0315 mm of 0.1016 mm allowed, toward 75.0°: 4.3823 − 4.3624 = 0.0199 mm',
    'tilt 0.00124 in of 0.00400 in allowed, toward 75.0°: 0.17253 − 0.17175 = 0.00078 in',
  ],
  ['12 stations, least margin 0.4077 mm: P = 1.000000', '12 stations, least margin 0.01605 in: P = 1.000000'],
])('added or compared lengths are worked out in inches: %s', (metric, inches) => {
  expect(workingIn(metric, 'in')).toBe(inches);
  expect(workingIn(metric, 'mm')).toBe(metric);
});

test.each([
  'U_per = 9549 · 6.3 mm/s · 2.948 kg / 3000 rpm = 59.12 g·mm',
  'Le = 2 · 56.66/14.69 per mm = 7.71 mm',
  '12 points: a = 0.0346 µm/mm, b = 0.2323 µm/mm, c = 5.2347 mm',
  'threads = (30.35 − 4.06 − 12.70)/1.058 = 12.8',
])('a formula with constants or units of its own stays as its source has it: %s', (metric) => {
  expect(workingIn(metric, 'in')).toBeNull();
});
