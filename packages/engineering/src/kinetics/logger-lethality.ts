import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number, text } from '../calculation/inputs.ts';
import { evaluateSensor } from './logger/evaluate.ts';
import { type LoggerOptions, readLogger } from './logger/read-csv.ts';

export const loggerLethality = calculation({
  name: 'lethality-of-logger-file',
  title: 'Lethality from a logger file with several sensors: the slowest sensor counts',
  inputs: {
    file: text('logger file', 'CSV text: header line, first column time, one column a sensor'),
    reference_degC: number('T_ref', 'reference temperature', 'degC', {
      default: 121.1,
      min: 0,
      max: 200,
      from: 'F0; 60 degC and z 7 K for pasteurisation units, 80 degC for A0',
    }),
    z: number('z', 'temperature difference for a factor of ten', 'K', {
      default: 10,
      min: 1,
      max: 60,
      from: 'of F0, common practice',
    }),
    target_min: number('F_t', 'lethality asked for', 'min', {
      default: 15,
      min: 0,
      max: 1e5,
      from: 'common practice',
    }),
    longestGap: number('g', 'longest gap that is bridged by a straight line', 's', {
      default: 60,
      min: 0,
      max: 86400,
      from: 'common practice',
    }),
    timeUnit: choice(
      'unit of plain times',
      { header: 'as the header says', s: 'seconds', min: 'minutes', h: 'hours' },
      { default: 'header' },
    ),
    temperatureUnit: choice(
      'unit of the temperatures',
      { header: 'as the header says', degC: 'degrees Celsius', degF: 'degrees Fahrenheit' },
      { default: 'header' },
    ),
  },
  outputs: {
    slowest_min: { symbol: 'F', label: 'lethality of the slowest sensor', unit: 'min' },
    margin_min: { symbol: 'dF', label: 'margin over the lethality asked for', unit: 'min' },
    trapezoid_min: { symbol: 'F_tr', label: 'the same by the trapezoid rule', unit: 'min' },
    sensors: { symbol: 'n', label: 'number of sensors', unit: '1' },
    samples: { symbol: 'N', label: 'number of samples', unit: '1' },
    duration_min: { symbol: 't', label: 'duration of the record', unit: 'min' },
    gap_min: { symbol: 't_g', label: 'longest total time without data of any sensor', unit: 'min' },
  },
  equation: [
    'F = sum of dt (L_2 - L_1) / ln(L_2/L_1), L = 10^((T - T_ref)/z)',
    'gaps longer than g count nothing',
  ],
  validity:
    'Log-linear kill with constant z. No correction for the calibration of the sensors: subtract their uncertainty before.',
  source: 'W. D. Bigelow (1921); C. O. Ball (1923); exact segment integral by hand',
  example: {
    inputs: {
      file: 'time min,cold end degC,drain degC\n0,121.1,100\n10,121.1,121.1\n31.1,121.1,121.1\n',
      target_min: 15,
      longestGap: 3600,
    },
    // Drain: 10 z/(ln10 * 21.1) (1 - 10^-2.11) + 21.1 = 2.042 + 21.1.
    expected: { slowest_min: 23.14229, samples: 3, sensors: 2 },
    tolerance: 1e-5,
    source: 'closed form of a straight rise, check value K-08',
  },
  caution:
    'The number holds for the places of the sensors only. An unsafe product can kill: release is the decision of a competent person.',
  compute(x) {
    const options: LoggerOptions = {
      ...(x.timeUnit === 'header' ? {} : { timeUnit: x.timeUnit }),
      ...(x.temperatureUnit === 'header' ? {} : { temperatureUnit: x.temperatureUnit }),
    };
    const data = readLogger(x.file, options);
    if (data.kind === 'error') return refuse(`The logger file cannot be read: ${data.message}`);
    const results = data.sensors.map((sensor) =>
      evaluateSensor(sensor.name, data.seconds, sensor.celsius, x.reference_degC, x.z, x.longestGap),
    );
    const silent = results.filter((r) => r.samples === 0);
    if (silent.length > 0)
      return refuse(`Sensor "${silent[0].name}" has no value at all: leave its column out`);
    const slowest = results.reduce((a, b) => (b.exact < a.exact ? b : a));
    const gap = Math.max(...results.map((r) => r.gap));
    const odd = results.filter((r) => r.least < -60 || r.greatest > 300);
    return {
      values: {
        slowest_min: slowest.exact,
        margin_min: slowest.exact - x.target_min,
        trapezoid_min: slowest.trapezoid,
        sensors: results.length,
        samples: data.seconds.length,
        duration_min: data.seconds[data.seconds.length - 1] / 60,
        gap_min: gap,
      },
      tables: [
        {
          title: 'Sensors',
          columns: [
            { name: 'sensor', unit: '' },
            { name: 'lethality', unit: 'min' },
            { name: 'by trapezoid', unit: 'min' },
            { name: 'lowest', unit: 'degC' },
            { name: 'highest', unit: 'degC' },
            { name: 'at or above the reference', unit: 'min' },
            { name: 'without data', unit: 'min' },
          ],
          rows: results.map((r) => [r.name, r.exact, r.trapezoid, r.least, r.greatest, r.above, r.gap]),
        },
      ],
      warnings: [
        `The slowest sensor is "${slowest.name}".`,
        ...(slowest.exact < x.target_min ? ['The lethality asked for is not reached.'] : []),
        ...(slowest.exact < x.target_min && slowest.trapezoid >= x.target_min
          ? ['By the trapezoid rule it would seem to be reached: that rule overstates.']
          : []),
        ...(gap > 0 ? [`Up to ${gap.toFixed(2)} min of data are missing; they count nothing.`] : []),
        ...odd.map(
          (r) =>
            `Sensor "${r.name}" reads from ${r.least} to ${r.greatest} degC: look for a broken wire or a wrong unit.`,
        ),
        ...data.notes,
      ],
    };
  },
});
