/**
 * Which clause can stand in which declaration, as data; the words of hazards, notices and states.
 * The parser reads any clause anywhere and reports the ones that have no meaning where they stand.
 */
import type { ClauseName, DeclarationKind } from '../syntax/tree.ts';

export const DECLARATION_KINDS: readonly DeclarationKind[] = [
  'part',
  'fastener',
  'seal',
  'connection',
  'control',
  'isolator',
  'face',
  'system',
  'fluid',
  'consumable',
  'tool',
  'kit',
];

const EVERYWHERE: readonly ClauseName[] = ['also called', 'part number', 'item', 'only', 'like'];
const PHYSICAL: readonly ClauseName[] = [
  'count',
  'positions',
  'under',
  'hazard',
  'mass',
  'added',
  'goes',
  'single-use',
  'supplied with',
  'part of',
];

export const CLAUSES_OF: Readonly<Record<DeclarationKind, readonly ClauseName[]>> = {
  part: [
    ...EVERYWHERE,
    ...PHYSICAL,
    'on',
    'held by',
    'sealed by',
    'joined by',
    'opens',
    'carries',
    'matched',
    'numbered',
    'fixed',
    'in',
    'lubricated with',
    'coated with',
    'runs',
    'left-hand',
    'secured by',
    'not over',
  ],
  fastener: [
    ...EVERYWHERE,
    ...PHYSICAL,
    'clamps',
    'with',
    'thread',
    'class',
    'grade',
    'left-hand',
    'stay',
    'frees when loose',
    'layout',
    'order',
    'torque',
    'plan',
    'lubricated with',
    'coated with',
    'secured by',
    'opens',
    'matched',
    'numbered',
    'nut factor',
    'thread friction',
    'head friction',
    'prevailing torque',
    'not over',
    'on',
    'sealed by',
    'length',
  ],
  seal: [
    ...EVERYWHERE,
    ...PHYSICAL,
    'on',
    'lubricated with',
    'coated with',
    'matched',
    'numbered',
    'opens',
    'fixed',
  ],
  connection: [
    ...EVERYWHERE,
    ...PHYSICAL,
    'joins',
    'opens',
    'first off',
    'last on',
    'slack',
    'sealed by',
    'torque',
    'thread',
    'left-hand',
    'matched',
    'numbered',
    'in',
    'lubricated with',
  ],
  control: [
    ...EVERYWHERE,
    ...PHYSICAL,
    'in',
    'normally',
    'on',
    'held by',
    'sealed by',
    'joined by',
    'opens',
    'fixed',
    'torque',
  ],
  isolator: [
    ...EVERYWHERE,
    ...PHYSICAL,
    'in',
    'normally',
    'on',
    'held by',
    'sealed by',
    'joined by',
    'opens',
    'fixed',
    'torque',
  ],
  face: [...EVERYWHERE, 'under', 'on', 'coated with', 'lubricated with', 'count', 'positions'],
  system: [
    ...EVERYWHERE,
    'holds',
    'service fill',
    'pressure',
    'temperature',
    'live',
    'stored',
    'relieved at',
    'drained at',
    'filled at',
    'vented at',
    'isolated at',
    'bled at',
    'proved with',
    'needs bleeding',
    'hazard',
    'runs',
    'not over',
    'in',
  ],
  fluid: [...EVERYWHERE, 'hazard'],
  consumable: [...EVERYWHERE, 'hazard', 'open time', 'curing time'],
  tool: [...EVERYWHERE, 'range', 'accuracy', 'locks', 'length', 'adapter', 'on', 'mass', 'count'],
  kit: [...EVERYWHERE, 'contains', 'supplied with'],
};

/** What follows the words of a clause; the parser reads every clause by its shape. */
export type ClauseShape =
  | 'names'
  | 'names and each'
  | 'names to names'
  | 'count'
  | 'words'
  | 'nothing'
  | 'text'
  | 'texts'
  | 'number'
  | 'condition'
  | 'hazards'
  | 'quantity'
  | 'quantity and fluid'
  | 'designation'
  | 'layout'
  | 'order'
  | 'plan'
  | 'state';

export const CLAUSE_SHAPES: Readonly<Record<ClauseName, ClauseShape>> = {
  on: 'names',
  under: 'names',
  'sealed by': 'names',
  'joined by': 'names',
  opens: 'names',
  carries: 'names',
  'part of': 'names',
  'supplied with': 'names',
  like: 'names',
  'lubricated with': 'names',
  'coated with': 'names',
  'secured by': 'names',
  in: 'names',
  'relieved at': 'names',
  'drained at': 'names',
  'filled at': 'names',
  'vented at': 'names',
  'isolated at': 'names',
  'bled at': 'names',
  'proved with': 'names',
  runs: 'names',
  locks: 'names',
  contains: 'names',
  with: 'names',
  'held by': 'names and each',
  clamps: 'names to names',
  joins: 'names to names',
  count: 'count',
  positions: 'words',
  matched: 'nothing',
  numbered: 'nothing',
  'single-use': 'nothing',
  added: 'nothing',
  fixed: 'nothing',
  'left-hand': 'nothing',
  stay: 'nothing',
  'first off': 'nothing',
  'last on': 'nothing',
  slack: 'nothing',
  'needs bleeding': 'nothing',
  'frees when loose': 'nothing',
  adapter: 'nothing',
  goes: 'text',
  'part number': 'text',
  stored: 'text',
  'also called': 'texts',
  item: 'number',
  only: 'condition',
  hazard: 'hazards',
  mass: 'quantity',
  torque: 'quantity',
  pressure: 'quantity',
  temperature: 'quantity',
  live: 'quantity',
  'service fill': 'quantity',
  range: 'quantity',
  accuracy: 'quantity',
  length: 'quantity',
  'open time': 'quantity',
  'curing time': 'quantity',
  'nut factor': 'quantity',
  'thread friction': 'quantity',
  'head friction': 'quantity',
  'prevailing torque': 'quantity',
  'not over': 'quantity',
  holds: 'quantity and fluid',
  thread: 'designation',
  class: 'designation',
  grade: 'designation',
  layout: 'layout',
  order: 'order',
  plan: 'plan',
  normally: 'state',
};

/** Quantities without a unit; every other quantity of a clause has one, usually one of these. */
export const CLAUSE_UNITS: Readonly<Partial<Record<ClauseName, string>>> = {
  mass: 'kg or lb',
  torque: 'N·m or lbf·ft',
  pressure: 'bar or psi',
  temperature: '°C or °F',
  live: 'V',
  'service fill': 'L or qt',
  range: 'N·m or lbf·ft',
  accuracy: '%',
  length: 'mm or in',
  'open time': 'min or h',
  'curing time': 'min or h',
  'prevailing torque': 'N·m or lbf·ft',
  'not over': 'N·m or lbf·ft',
  holds: 'L or qt',
};

export const SIGNALS = ['danger', 'warning', 'caution', 'notice', 'note'] as const;

export const HAZARDS = [
  'pressure',
  'hot',
  'cold',
  'live',
  'stored-energy',
  'fuel',
  'chemical',
  'lifting',
  'moving',
  'sharp',
  'dust',
  'noise',
  'light',
  'falling',
] as const;

/** Words that people write for these hazards. Common practice, no source. */
export const HAZARD_SYNONYMS: Readonly<Record<string, (typeof HAZARDS)[number]>> = {
  electric: 'live',
  electrical: 'live',
  electricity: 'live',
  voltage: 'live',
  shock: 'live',
  heat: 'hot',
  burn: 'hot',
  burns: 'hot',
  frost: 'cold',
  pressurised: 'pressure',
  pressurized: 'pressure',
  stored: 'stored-energy',
  spring: 'stored-energy',
  petrol: 'fuel',
  gasoline: 'fuel',
  chemicals: 'chemical',
  heavy: 'lifting',
  weight: 'lifting',
  rotating: 'moving',
  crushing: 'moving',
  cut: 'sharp',
  cutting: 'sharp',
  drop: 'falling',
  noisy: 'noise',
  loud: 'noise',
};

/** Normal positions of a control or isolator. */
export const POSITIONS = ['open', 'closed', 'on', 'off'] as const;

/** What keeps a fastener from coming loose, where no thing of the machine is named. */
export const SECURING = [
  ...['lock-tab', 'tab', 'lock-washer', 'wire', 'lock-wire', 'second-nut', 'lock-nut', 'compound'],
  ...['thread-lock', 'split-pin', 'pin', 'clip', 'circlip', 'key', 'staking', 'peening'],
] as const;

/** Protective clothing by its usual words; others are the author's own. */
export const CLOTHING = [
  ...['gloves', 'insulating-gloves', 'eye-protection', 'goggles', 'safety-glasses', 'face-shield'],
  ...['ear-protection', 'hearing-protection', 'safety-shoes', 'safety-boots', 'helmet', 'hard-hat', 'apron'],
  ...['overalls', 'mask', 'dust-mask', 'respirator', 'life-jacket', 'harness', 'wrist-strap', 'knee-pads'],
  ...['arc-rated-clothing', 'high-visibility-vest'],
] as const;

/** How bad a declared hazard is at its worst, as it stands after its words: `hazard live can kill`. */
export const HARM_WORDS = ['will kill', 'can kill', 'can hurt', 'can damage'] as const;

/** State words of conditions and claims, each with what it can be said of. */
export const STATES: Readonly<Record<string, readonly string[]>> = {
  fitted: ['part', 'seal', 'fastener', 'tool'],
  off: ['part', 'seal', 'fastener', 'tool', 'control', 'isolator'],
  on: ['control', 'isolator'],
  aside: ['part', 'connection'],
  loose: ['fastener'],
  tight: ['fastener'],
  'hand-tight': ['fastener'],
  connected: ['connection'],
  disconnected: ['connection'],
  capped: ['connection'],
  open: ['control', 'isolator', 'connection'],
  closed: ['control', 'isolator', 'connection'],
  locked: ['isolator', 'control', 'part'],
  unlocked: ['isolator', 'control', 'part'],
  full: ['system'],
  drained: ['system'],
  pressurised: ['system'],
  relieved: ['system'],
  hot: ['system', 'part'],
  cool: ['system', 'part'],
  live: ['system'],
  isolated: ['system'],
  safe: ['system'],
  bled: ['system'],
  clean: ['face', 'part', 'seal', 'fastener'],
  dirty: ['face'],
  supported: ['part'],
  raised: ['part'],
  marked: ['part'],
  new: ['part', 'seal', 'fastener'],
};
