/**
 * The fixed words of pages and of the site: headings, labels and what the boxes say. One entry for each, so that a
 * translation or another spelling is one object more. The words of the steps themselves are made with the document.
 */

export interface PageWords {
  // The head of a page.
  skip: string;
  site: string;
  document: string;
  issue: string;
  date: string;
  machine: string;
  purpose: string;
  contents: string;
  none: string;
  asUsual: string;
  notStated: string;
  // What is needed.
  before: string;
  choose: string;
  chooseAll: string;
  chooseNote: string;
  appliesTo: string;
  serialNumbers: string;
  people: string;
  peopleAtOnce: (count: number) => string;
  skill: string;
  time: string;
  ofWhichWaiting: (text: string) => string;
  conditions: string;
  startsWith: string;
  protection: string;
  tools: string;
  tool: string;
  range: string;
  newParts: string;
  part: string;
  howMany: string;
  partNumber: string;
  kits: string;
  contains: (list: string) => string;
  fluids: string;
  amount: string;
  into: (list: string) => string;
  asNeeded: string;
  consumables: string;
  openTime: (text: string) => string;
  curingTime: (text: string) => string;
  ifFound: string;
  withKit: (name: string) => string;
  comesWith: (name: string) => string;
  notListed: string;
  hazards: string;
  hazard: string;
  atSteps: string;
  differences: string;
  usedProcedures: string;
  printedElsewhere: (where: string) => string;
  // The job.
  job: string;
  task: (number: string) => string;
  step: (number: string) => string;
  stepDone: (number: string) => string;
  under: (condition: string) => string;
  expect: string;
  onlyInside: (condition: string) => string;
  stages: string;
  stage: string;
  order: string;
  wrench: string;
  peopleNeeded: (count: number) => string;
  waits: (time: string) => string;
  reading: string;
  means: string;
  whatToDo: string;
  goOn: string;
  table: (title: string) => string;
  gives: string;
  until: string;
  pictureMissing: (alt: string) => string;
  drawing: string;
  inWords: string;
  map: string;
  piece: (title: string, number: number) => string;
  chart: string;
  orders: string;
  // Afterwards.
  after: string;
  endsWith: string;
  leftAtEnd: string;
  tally: string;
  tallyNote: string;
  cameOff: string;
  wentBack: string;
  fresh: string;
  discarded: string;
  dependsOnTheDay: string;
  either: (a: number, b: number) => string;
  between: (least: number, most: number) => string;
  waste: string;
  disposal: string;
  troubles: string;
  sign: string;
  records: string;
  waivers: string;
  because: string;
  changes: string;
  checked: string;
  findings: string;
  findingsOnTop: string;
  findingsWarn: string;
  sources: string;
  noDate: string;
  cautions: string;
  value: string;
  // What the script says.
  work: WorkWords;
  // The site.
  index: string;
  procedures: string;
  machines: string;
  checks: string;
  search: string;
  searchNote: string;
  searchNone: string;
  severity: string;
  group: string;
  source: string;
  wrong: string;
  right: string;
  description: string;
  skipToContent: string;
  searchSome: string;
  checksLead: (count: number) => string;
  check: string;
  variants: string;
  name: string;
  facts: string;
  kinds: Readonly<Record<string, string>>;
}

/** Words that the page's own script puts in; plain texts, with `{0}` for what is filled in. */
export interface WorkWords {
  bench: string;
  benchEmpty: string;
  benchOff: string;
  benchAside: string;
  benchApart: string;
  benchAway: string;
  benchDiscarded: string;
  benchTool: string;
  progress: string;
  clear: string;
  clearSure: string;
  cleared: string;
  print: string;
  large: string;
  skipped: string;
  done: string;
  left: string;
  notDone: string;
  notSigned: string;
  kept: string;
  notKept: string;
  fallsHere: string;
}

const BRITISH: PageWords = {
  skip: 'Skip to the job',
  site: 'All procedures',
  document: 'Document',
  issue: 'Issue',
  date: 'Date',
  machine: 'Machine',
  purpose: 'Purpose',
  contents: 'The job in short',
  none: 'None.',
  asUsual: 'In working order, with everything in place.',
  notStated: 'Not stated.',
  before: 'Before you start',
  choose: 'Your machine',
  chooseAll: 'show all',
  chooseNote: 'Choose, and the page shows only what belongs to your machine.',
  appliesTo: 'Applies to',
  serialNumbers: 'Serial numbers',
  people: 'People',
  peopleAtOnce: (count) => `one step takes ${count}`,
  skill: 'Skill',
  time: 'Time',
  ofWhichWaiting: (text) => `of which waiting: ${text}`,
  conditions: 'Conditions',
  startsWith: 'How the machine stands at the start',
  protection: 'Protective equipment',
  tools: 'Tools',
  tool: 'Tool',
  range: 'Range',
  newParts: 'New parts',
  part: 'Part',
  howMany: 'How many',
  partNumber: 'Part number',
  kits: 'Kits',
  contains: (list) => `contains ${list}`,
  fluids: 'Fluids',
  amount: 'Amount',
  into: (list) => `into: ${list}`,
  asNeeded: 'as needed',
  consumables: 'Consumables',
  openTime: (text) => `to be closed within ${text}`,
  curingTime: (text) => `cures in ${text}`,
  ifFound: 'only if the inspection says so',
  withKit: (name) => `in the ${name}`,
  comesWith: (name) => `comes with the new ${name}`,
  notListed: 'not in the list of the procedure',
  hazards: 'Hazards at a glance',
  hazard: 'Hazard',
  atSteps: 'At steps',
  differences: 'What differs from machine to machine',
  usedProcedures: 'Procedures that this one uses',
  printedElsewhere: (where) => `Printed elsewhere: ${where}`,
  job: 'The job',
  task: (number) => `Task ${number}`,
  step: (number) => `Step ${number}`,
  stepDone: (number) => `Step ${number} done`,
  under: (condition) => `Only ${condition}`,
  expect: 'It is done when:',
  onlyInside: (condition) => `only ${condition}`,
  stages: 'Stages of tightening',
  stage: 'Stage',
  order: 'Order',
  wrench: 'Torque wrench',
  peopleNeeded: (count) => `This takes ${count} people.`,
  waits: (time) => `Waiting time: ${time}.`,
  reading: 'Reading',
  means: 'Means',
  whatToDo: 'What to do',
  goOn: 'Go on.',
  table: (title) => `Table: ${title}`,
  gives: 'Take',
  until: 'until',
  pictureMissing: (alt) => `Picture not shown: ${alt}`,
  drawing: 'Drawing',
  inWords: 'The same in words',
  map: 'How the things belong together',
  piece: (title, number) => `${title}, part ${number}`,
  chart: 'What comes off and when it goes back',
  orders: 'Tightening orders',
  after: 'At the end',
  endsWith: 'How the machine stands at the end',
  leftAtEnd: 'Left off, aside or open on purpose',
  tally: 'Last count',
  tallyNote: 'What came off against what went back. Count it on the bench before you hand the machine over.',
  cameOff: 'Came off',
  wentBack: 'Went back',
  fresh: 'New',
  discarded: 'Thrown away',
  dependsOnTheDay: 'depends on what you find',
  either: (a, b) => `${a} or ${b}`,
  between: (least, most) => `${least} to ${most}`,
  waste: 'Waste',
  disposal: 'What to do with it',
  troubles: 'When it does not come right',
  sign: 'What you see',
  records: 'Values and signatures to write down',
  waivers: 'Waivers',
  because: 'Reason',
  changes: 'Change record',
  checked: 'Check result',
  findings: 'Findings',
  findingsOnTop: 'This procedure has findings',
  findingsWarn:
    'It was published all the same. Do not work by it before somebody who knows the machine has looked at these.',
  sources: 'Made from',
  noDate: 'date not known',
  cautions: 'Cautions',
  value: 'Value',
  work: {
    bench: 'On the bench now',
    benchEmpty: 'Nothing.',
    benchOff: 'off',
    benchAside: 'moved aside',
    benchApart: 'disconnected or open',
    benchAway: 'sent away',
    benchDiscarded: 'thrown away, the new one is not in yet',
    benchTool: 'tool still on the machine',
    progress: '{0} of {1} steps ticked',
    clear: 'Clear all',
    clearSure: 'Press again to clear all ticks and entries',
    cleared: 'All ticks and entries are cleared.',
    print: 'Print',
    large: 'Large',
    skipped: 'Not ticked before the last ticked step: {0}',
    done: 'Every step is ticked, and nothing is left on the bench.',
    left: 'Every step is ticked, but this is left on the bench: {0}',
    notDone: '{0} steps are not ticked yet.',
    notSigned: 'Not filled in yet: {0}',
    kept: 'Ticks and entries are kept in this browser only.',
    notKept: 'This browser keeps nothing: ticks and entries are lost when the page is closed.',
    fallsHere: 'Your reading falls here.',
  },
  index: 'Repair procedures',
  procedures: 'Procedures',
  machines: 'Machines',
  checks: 'Checks',
  search: 'Search',
  searchNote: 'Part of a title, a document number, a part, a tool.',
  searchNone: 'Nothing found.',
  severity: 'Severity',
  group: 'Group',
  source: 'Source',
  wrong: 'Wrong',
  right: 'Right',
  description: 'Description',
  skipToContent: 'Skip to the content',
  searchSome: 'Found: {0}',
  checksLead: (count) =>
    `Every procedure here was read by ${count} checks before it was published. What each looks at, and why:`,
  check: 'Check',
  variants: 'Variants',
  name: 'Name',
  facts: 'What is known of it',
  kinds: {
    part: 'Parts',
    fastener: 'Fasteners',
    seal: 'Seals',
    connection: 'Connections',
    control: 'Controls',
    isolator: 'Isolators',
    face: 'Faces',
    system: 'Systems',
    fluid: 'Fluids',
    consumable: 'Consumables',
    tool: 'Tools',
    kit: 'Kits',
  },
};

/** American readers: the same words, for none of them is spelt another way so far. */
const AMERICAN: PageWords = { ...BRITISH };

export function pageWords(language: 'en-GB' | 'en-US'): PageWords {
  return language === 'en-US' ? AMERICAN : BRITISH;
}
