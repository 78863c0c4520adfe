import { plural } from './plural.ts';

/** The page of the engineering calculations. */
export const calculations = {
  calculations: {
    title: 'Calculations',
    intro: 'Each one shows its working, its range and its source. Values are typed with their units.',
    find: 'Find a calculation',
    findHint:
      'Words of its title, name, inputs or results, such as “dead leg” or “dry”. Enter opens the first.',
    count: (n: number) => plural(n, 'calculation', 'calculations'),
    none: 'Nothing fits. Try fewer or other words.',
    all: 'All calculations',
    noSuch: (name: string) => `There is no calculation “${name}”.`,
    inputs: 'Inputs',
    example: 'Use the worked example',
    empty: 'Empty the fields',
    copy: 'Copy as text',
    copied: 'Result and working are copied as text.',
    notCopied: 'The browser does not allow copying here. Select the words on the page instead.',
    link: 'The address of this page keeps what you typed: reload it, or send it to someone.',
    notInLink: (labels: string) =>
      `Too long for the address of this page: ${labels}. Give it again after a reload.`,
    preset: (value: string) => `if left empty: ${value}`,
    needed: 'needed',
    between: (low: string, high: string) => `${low} to ${high}`,
    atLeast: (low: string) => `${low} or more`,
    atMost: (high: string) => `${high} or less`,
    usual: (low: string, high: string) => `formula made for ${low} to ${high}`,
    whole: 'a whole number',
    list: (count: number, unit: string) =>
      unit === ''
        ? `at least ${plural(count, 'value', 'values')}, separated by ;`
        : `at least ${plural(count, 'value', 'values')} in ${unit}, separated by ;`,
    choose: 'choose',
    chooseFile: 'Choose a file …',
    removeFile: 'Remove the file',
    file: (name: string, megabytes: string) => `${name}, ${megabytes} MB`,
    pasted: 'pasted text',
    result: 'Result',
    working: 'Working …',
    waiting: 'Fill in the fields, or use the worked example.',
    failed: (why: string) => `The calculation stopped by a fault of the program: ${why}`,
    unreadable: (file: string) => `${file} cannot be read any more. Choose it again.`,
    give: (label: string, unit: string) => `Give the ${label} in ${unit} or another unit of its kind.`,
    giveOne: (label: string) => `Give the ${label}.`,
    alsoFound: 'Also found',
    usedInputs: 'Values used',
    formula: 'Formula',
    validity: 'Holds for',
    source: 'Source',
    caution: 'Caution',
    note: 'Note',
    gives: 'Gives',
    exampleFrom: (source: string) => `The worked example: ${source}.`,
    moreRows: (n: number) =>
      `${plural(n, 'more row stands', 'more rows stand')} in the text that can be copied.`,
    chart: (title: string, across: string, series: string) =>
      `Chart of ${title}: ${series} over ${across}. The table below holds the same numbers.`,
  },
};
