import { calculation } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

/** Guidance, mg/L at ambient temperature, and the pitting temperature at one chloride content (secondary copies). */
const guidance = {
  s304: { careful: 100, most: 200, pitting: [300, 40] },
  s316: { careful: 500, most: 1000, pitting: [500, 70] },
} as const;

export const chlorideAllowance = calculation({
  name: 'chloride-limit',
  title: 'Chloride in contact with 304 or 316 stainless steel: what guidance says',
  inputs: {
    steel: choice('steel', { s304: '304 kind (1.4301, 1.4307)', s316: '316 kind (1.4401, 1.4404, 1.4435)' }),
    chloride_mgL: number('Cl', 'chloride', 'mg/L', { min: 0, max: 200000 }),
    temperature_degC: number('T', 'temperature', 'degC', {
      default: 20,
      min: 0,
      max: 140,
      from: 'a room, common practice',
    }),
    oxidant: choice('oxidant such as hypochlorite', { no: 'none', yes: 'present' }, { default: 'no' }),
  },
  outputs: {
    verdict: {
      symbol: 'v',
      label: 'verdict',
      unit: '1',
      words: { 2: 'within guidance', 1: 'doubtful', 0: 'beyond guidance' },
    },
    careful_mgL: { symbol: 'Cl_1', label: 'careful guidance at ambient temperature', unit: 'mg/L' },
    most_mgL: { symbol: 'Cl_2', label: 'generous guidance at ambient temperature', unit: 'mg/L' },
    pitting_degC: { symbol: 'T_p', label: 'pitting temperature named by one source', unit: 'degC' },
  },
  equation: [
    'beyond: Cl above the generous guidance, or Cl and T at or above the named pitting point, or above 60 degC with Cl above the careful guidance (stress corrosion)',
    'within: Cl up to the careful guidance, at most 40 degC, no oxidant; between: doubtful',
  ],
  validity:
    'Guidance that depends on crevices, pH, stress, flow and time: sources disagree by a factor of five. Unknown conditions are never "fine".',
  source:
    'NiDI 11003 and 11004 (secondary copies): 304 100 to 200, 316 500 to 1000 mg/L; engineering note on pitting temperature; 60 degC from memory',
  example: {
    inputs: { steel: 's304', chloride_mgL: 300, temperature_degC: 40 },
    expected: { verdict: 0, pitting_degC: 40 },
    tolerance: 0,
    source: 'check values M-03 to M-05',
  },
  compute({ steel, chloride_mgL, temperature_degC, oxidant }) {
    const { careful, most, pitting } = guidance[steel];
    const [pittingChloride, pittingTemperature] = pitting;
    const beyond =
      chloride_mgL > most ||
      (chloride_mgL >= pittingChloride && temperature_degC >= pittingTemperature) ||
      (temperature_degC > 60 && chloride_mgL > careful);
    const within = chloride_mgL <= careful && temperature_degC <= 40 && oxidant === 'no';
    return {
      values: {
        verdict: beyond ? 0 : within ? 2 : 1,
        careful_mgL: careful,
        most_mgL: most,
        pitting_degC: pittingTemperature,
      },
      warnings: [
        ...(beyond
          ? ['Beyond guidance: expect pitting, crevice or stress corrosion; choose another steel or medium.']
          : []),
        ...(!beyond && !within
          ? ['Doubtful: ask for a test or the supplier, and keep gaps and deposits away.']
          : []),
        ...(oxidant === 'yes' ? ['An oxidant raises the potential and lowers every limit.'] : []),
        ...(temperature_degC > 60
          ? ['Above about 60 degC chloride and tensile stress crack austenitic steel.']
          : []),
      ],
    };
  },
});
