/** Clean air over open containers. */
export const air = {
  air: {
    title: 'Air and filling',
    intro:
      'For every open container: how much of the filtered air comes straight from the filter, what interrupts it, what hangs above. Geometry sees straight flow; a smoke study shows the real one, with packs on the line and the line running.',
    notSurveyed: 'This is told when the model is surveyed.',
    none: 'No open container is known. Accept or add one on the Site page.',
    noFilter:
      'No filter face is known, so nothing is said about first air. Accept or add one on the Site page.',
    toSite: 'To the site',
    columns: {
      mouth: 'Container',
      open: 'First air',
      interrupted: 'Interrupted by',
      distance: 'From the filter',
      above: 'What hangs above',
      more: 'Calculate',
    },
    nothing: 'nothing',
    share: (part: string, share: string) => `${part}, ${share}`,
    hangs: (part: string, covers: string, height: string) =>
      `${part}, over ${covers} of the mouth, ${height} above it`,
    transit: (time: string) => `${time} on its way`,
    contamination: 'what falls in',
    drift: 'drift by a draught',
    contaminationNamed: (mouth: string) => `What falls in: ${mouth}`,
    driftNamed: (mouth: string) => `Drift by a draught: ${mouth}`,
    findings: 'Findings on air',
    noFindings: 'No finding on air.',
    caution:
      'An unsafe product can kill. These numbers support a decision about the design; they do not show that a product is sterile or safe. A process authority decides.',
    alsoCalculate: 'Also to be calculated',
    calculations: {
      'room-balance': 'Contamination of a mixed room with people',
      'iso-class-evaluation': 'Particle counts against a class of ISO 14644-1',
      'recovery-time': 'Recovery of a room after contamination',
      'clean-up-rate': 'Clean-up rate from two counts',
      'settle-plate-to-container': 'What a settle plate says about containers beside it',
      'filter-penetration': 'What a high-efficiency filter lets through',
      'hydrogen-peroxide-liquid': 'Liquid hydrogen peroxide against spores',
      'sample-size-for-rate': 'How many units show that a rate is below a limit',
    },
  },
};
