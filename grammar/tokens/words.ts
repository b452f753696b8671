/**
 * The words of the language as data: which words begin something, and which words and phrases join clauses,
 * tails and lists, by the place where they are special. Verbs are in verbs.ts, clauses in clauses.ts.
 */
import type { TokenType } from 'chevrotain';
import type { ClauseName } from '../syntax/tree.ts';
import { CLAUSE_SHAPES, type ClauseShape, DECLARATION_KINDS, HARM_WORDS, SIGNALS } from './clauses.ts';
import * as T from './types.ts';

/** Where a token stands: what the braces around it belong to. */
export type Context = 'top' | 'machine' | 'rule' | 'table' | 'plan' | 'block' | 'outcomes';

/** Words that begin an item of a file. */
export const FILE_STARTS: ReadonlyMap<string, TokenType> = new Map([
  ['use', T.UseStart],
  ['machine', T.MachineStart],
  ['procedure', T.ProcedureStart],
]);

/** Words that begin an item of a machine (or of a file that many machines share). */
export const MACHINE_STARTS: ReadonlyMap<string, TokenType> = new Map([
  ...DECLARATION_KINDS.map((kind): [string, TokenType] => [kind, T.Kind]),
  ['coupled', T.CoupledStart],
  ['value', T.ValueStart],
  ['table', T.TableStart],
  ['variant', T.VariantStart],
  ['never', T.Demand],
  ['rule', T.RuleStart],
]);

/** Words that begin a statement of a procedure and are no verbs. `for each` is two words. */
export const STATEMENT_STARTS: ReadonlyMap<string, TokenType> = new Map([
  ['task', T.TaskStart],
  ['step', T.StepStart],
  ...SIGNALS.map((signal): [string, TokenType] => [signal, T.Signal]),
  ['when', T.WhenStart],
  ['if', T.IfStart],
  ['choice', T.ChoiceStart],
  ['repeat', T.RepeatStart],
  ['reverse', T.ReverseStart],
  ['do', T.DoStart],
  ['hold', T.HoldStart],
  ['allow', T.AllowStart],
  ['stop', T.StopStart],
  ['continues', T.ContinuesStart],
  ['value', T.ValueStart],
]);

export const SCOPES: ReadonlySet<string> = new Set(['before', 'after', 'while', 'always']);
export const DEMANDS: ReadonlySet<string> = new Set(['require', 'never']);

export interface Phrase {
  words: readonly string[];
  key: string;
  type: TokenType;
}

const TYPE_OF_SHAPE: Readonly<Record<ClauseShape, TokenType | undefined>> = {
  names: T.ClauseRefs,
  'names and each': T.HeldBy,
  'names to names': T.Clamps,
  count: undefined,
  words: T.Positions,
  nothing: T.ClauseFlag,
  text: T.ClauseText,
  texts: T.AlsoCalled,
  number: T.Item,
  condition: T.Only,
  hazards: T.Hazard,
  quantity: T.ClauseQuantity,
  'quantity and fluid': T.Holds,
  designation: T.ClauseDesignation,
  layout: T.Layout,
  order: T.OrderWord,
  plan: T.PlanWord,
  state: T.Normally,
};

/** Clause words that also stand elsewhere and have a type of their own. */
const OWN_TYPE: Readonly<Partial<Record<ClauseName, TokenType>>> = {
  with: T.With,
  in: T.In,
  joins: T.Joins,
  'not over': T.NotOver,
};

function clausePhrases(): [string, TokenType][] {
  const list: [string, TokenType][] = [];
  for (const name of Object.keys(CLAUSE_SHAPES) as ClauseName[]) {
    const type = OWN_TYPE[name] ?? TYPE_OF_SHAPE[CLAUSE_SHAPES[name]];
    if (type) list.push([name, type]);
  }
  return list;
}

const COMMON: [string, TokenType][] = [
  ['and', T.And],
  ['or', T.Or],
  ['is', T.Is],
  ['not', T.Not],
  ['of', T.Of],
  ['to', T.To],
  ['with', T.With],
  ['except', T.Except],
  ['at least', T.Bound],
  ['at most', T.Bound],
];

const ORDERS: [string, TokenType][] = [
  ['from the middle', T.NamedOrder],
  ['across', T.NamedOrder],
  ['in turn', T.NamedOrder],
];

const INTERVALS: [string, TokenType][] = [
  ['up to', T.IntervalWord],
  ['over', T.IntervalWord],
  ['above', T.IntervalWord],
  ['below', T.IntervalWord],
  ['under', T.IntervalWord],
  ['exactly', T.IntervalWord],
  ['from', T.From],
];

const CLAIMS: [string, TokenType][] = [
  ['all of', T.AllOf],
  ['everything', T.Everything],
];

const MACHINE_PHRASES: [string, TokenType][] = [
  ...COMMON,
  ...clausePhrases(),
  ...ORDERS,
  ['reverse', T.NamedOrder],
  ['circle', T.Circle],
  ['extends', T.Extends],
  ['each', T.Each],
  ['to yield', T.ToYield],
  ['when', T.When],
  ['while', T.While],
  ['at', T.At],
  ...HARM_WORDS.map((words): [string, TokenType] => [words, T.Harm]),
];

const HEADER_PHRASES: [string, TokenType][] = [
  ['for', T.For],
  ['document', T.HeaderDocument],
  ['issue', T.Issue],
  ['people', T.HeaderPeople],
  ['skill', T.HeaderText],
  ['serial numbers', T.HeaderText],
  ['needs', T.HeaderText],
  ['change', T.HeaderText],
  ['elsewhere', T.HeaderText],
  ['time', T.HeaderTime],
  ['wear', T.HeaderWear],
  ['tools', T.HeaderTools],
  ['supplies', T.HeaderSupplies],
  ['starts with', T.HeaderClaims],
  ['ends with', T.HeaderClaims],
  ['starts where', T.HeaderStartsWhere],
  ['ends', T.Ends],
];

const BLOCK_PHRASES: [string, TokenType][] = [
  ...COMMON,
  ...ORDERS,
  ...CLAIMS,
  ['holding', T.Holding],
  ['while', T.While],
  ['by hand', T.ByHand],
  ['by table', T.By],
  ['by', T.By],
  ['from', T.From],
  ['into', T.Into],
  ['between', T.Between],
  ['until', T.Until],
  ['for', T.For],
  ['within', T.Within],
  ['not over', T.NotOver],
  ['not under', T.NotUnder],
  ['in order reverse', T.InOrder],
  ['in order', T.InOrder],
  ['in reverse order', T.InOrder],
  ['in', T.In],
  ['at', T.At],
  ['below', T.IntervalWord],
  ['to stage', T.Stage],
  ['stage', T.Stage],
  ['pass', T.Stage],
  ['times', T.TimesWord],
  ['as', T.As],
  ['expect', T.Expect],
  ['picture', T.Picture],
  ['and discard', T.AndDiscard],
  ['because', T.Because],
];

const PLAN_PHRASES: [string, TokenType][] = [
  ...COMMON,
  ['by hand', T.ByHand],
  ['loosen', T.StageWord],
  ['back off', T.StageWord],
  ['wait', T.StageWord],
  ['again', T.StageWord],
  ['until', T.Until],
  ['while', T.While],
];

const RULE_PHRASES: [string, TokenType][] = [
  ...COMMON,
  ['any', T.Any],
  ['that', T.That],
  ['times', T.TimesWord],
];

const TABLE_PHRASES: [string, TokenType][] = [...COMMON, ...INTERVALS, ['gives', T.Gives]];

export const PHRASES: Readonly<Record<Context, ReadonlyMap<string, readonly Phrase[]>>> = {
  top: table([...MACHINE_PHRASES, ...HEADER_PHRASES, ...CLAIMS]),
  machine: table(MACHINE_PHRASES),
  rule: table(RULE_PHRASES),
  table: table(TABLE_PHRASES),
  plan: table(PLAN_PHRASES),
  block: table(BLOCK_PHRASES),
  outcomes: table([...BLOCK_PHRASES, ...INTERVALS]),
};

/** Every clause word by itself, every tail word, every header word: for hints and completion. */
export const CLAUSE_WORDS: readonly string[] = clausePhrases().map(([name]) => name);
export const TAIL_WORDS: readonly string[] = BLOCK_PHRASES.map(([name]) => name);
export const HEADER_WORDS: readonly string[] = HEADER_PHRASES.map(([name]) => name);

function table(phrases: [string, TokenType][]): ReadonlyMap<string, readonly Phrase[]> {
  const map = new Map<string, Phrase[]>();
  const seen = new Set<string>();
  for (const [key, type] of phrases) {
    if (seen.has(key)) continue;
    seen.add(key);
    const words = key.split(' ');
    const list = map.get(words[0]!);
    if (list) {
      list.push({ words, key, type });
      list.sort((a, b) => b.words.length - a.words.length);
    } else map.set(words[0]!, [{ words, key, type }]);
  }
  return map;
}
