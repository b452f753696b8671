/**
 * The token types of the parser, and the token itself. A word of the language is a name wherever a name can
 * stand: its type belongs to the category `AnyWord`. What begins a statement does not: the arranging pass
 * (../parser/arrange.ts) gives those types only to words that stand where a statement begins.
 */
import { type IToken, Lexer, type TokenType } from 'chevrotain';
import type { Verb } from './verbs.ts';

/** The fields of a type that Chevrotain's `createToken` fills in, by a general search that takes a good part of a start. */
interface Type extends TokenType {
  tokenTypeIdx: number;
  CATEGORIES: Type[];
  categoryMatches: number[];
  categoryMatchesMap: Record<number, true>;
  isParent: boolean;
}

const vocabulary: Type[] = [];

/** Chevrotain's own types take the numbers below. */
export const FIRST_NUMBER = 8;

function type(name: string, ...categories: Type[]): Type {
  const made: Type = {
    name,
    PATTERN: Lexer.NA,
    tokenTypeIdx: FIRST_NUMBER + vocabulary.length,
    CATEGORIES: categories,
    categoryMatches: [],
    categoryMatchesMap: {},
    isParent: false,
  };
  vocabulary.push(made);
  for (const category of categories) belongs(made, category);
  return made;
}

/** A token of this type is one of the category, too, and of every category of that. */
function belongs(made: Type, category: Type): void {
  category.isParent = true;
  category.categoryMatches.push(made.tokenTypeIdx);
  category.categoryMatchesMap[made.tokenTypeIdx] = true;
  for (const wider of category.CATEGORIES) belongs(made, wider);
}

/** Everything but braces: what recovery may step over. */
export const Skippable = type('Skippable');
export const AnyWord = type('AnyWord', Skippable);

const mark = (name: string) => type(name, Skippable);
const word = (name: string) => type(name, AnyWord);

export const LBrace = type('LBrace');
export const RBrace = type('RBrace');

export const LParen = mark('LParen');
export const RParen = mark('RParen');
export const Comma = mark('Comma');
export const Colon = mark('Colon');
export const Semicolon = mark('Semicolon');
export const Equals = mark('Equals');
export const Plus = mark('Plus');
export const Minus = mark('Minus');
export const Times = mark('Times');
export const Slash = mark('Slash');
export const Dots = mark('Dots');
export const PlusMinus = mark('PlusMinus');
export const Bad = mark('Bad');

export const TextString = mark('TextString');
export const NumberToken = mark('NumberToken');
/** `+1/-0` */
export const Spread = mark('Spread');
export const Unit = mark('Unit');
export const PositionToken = mark('PositionToken');
export const Count = mark('Count');
export const Thread = mark('Thread');

export const PlainWord = word('PlainWord');
// `and`, `is` and `or` are the only words that can never be a name.
export const And = mark('And');
export const Is = mark('Is');
export const Or = mark('Or');

// ---- what begins a statement
const start = (name: string) => type(name, Skippable);
export const UseStart = start('UseStart');
export const MachineStart = start('MachineStart');
export const ProcedureStart = start('ProcedureStart');
export const Kind = start('Kind');
export const CoupledStart = start('CoupledStart');
export const ValueStart = start('ValueStart');
export const TableStart = start('TableStart');
export const VariantStart = start('VariantStart');
export const RuleStart = start('RuleStart');
export const TaskStart = start('TaskStart');
export const StepStart = start('StepStart');
export const Signal = start('Signal');
export const WhenStart = start('WhenStart');
export const IfStart = start('IfStart');
export const ChoiceStart = start('ChoiceStart');
export const RepeatStart = start('RepeatStart');
export const ForEachStart = start('ForEachStart');
export const ReverseStart = start('ReverseStart');
export const DoStart = start('DoStart');
export const HoldStart = start('HoldStart');
export const AllowStart = start('AllowStart');
export const StopStart = start('StopStart');
export const ContinuesStart = start('ContinuesStart');
export const VerbStart = start('VerbStart');
/** A word where a verb should stand. */
export const Unknown = start('Unknown');
/** `otherwise` right after a block. */
export const Otherwise = start('Otherwise');
/** A word directly before a brace where outcomes stand: `tight { }`. */
export const OutcomeWord = start('OutcomeWord');
/** `before`, `after`, `always` and `while` at the start of a rule's sentence. */
export const Scope = start('Scope');
/** `require`, `never`; `never` also rules out a combination of variants. */
export const Demand = start('Demand');

// ---- words of clauses, tails and the rest (names where a name can stand)
export const ClauseRefs = word('ClauseRefs');
export const ClauseFlag = word('ClauseFlag');
export const ClauseQuantity = word('ClauseQuantity');
export const ClauseText = word('ClauseText');
export const ClauseDesignation = word('ClauseDesignation');
export const HeldBy = word('HeldBy');
export const With = word('With');
export const Clamps = word('Clamps');
export const Joins = word('Joins');
export const Positions = word('Positions');
export const AlsoCalled = word('AlsoCalled');
export const Item = word('Item');
export const Only = word('Only');
export const Hazard = word('Hazard');
export const Harm = word('Harm');
export const Holds = word('Holds');
export const Layout = word('Layout');
export const OrderWord = word('OrderWord');
export const PlanWord = word('PlanWord');
export const Normally = word('Normally');
export const Extends = word('Extends');
export const Each = word('Each');
export const NotOver = word('NotOver');
export const NotUnder = word('NotUnder');

export const At = word('At');
export const By = word('By');
export const ByHand = word('ByHand');
export const From = word('From');
export const To = word('To');
export const Into = word('Into');
export const Between = word('Between');
export const Of = word('Of');
export const Except = word('Except');
export const While = word('While');
export const Until = word('Until');
export const For = word('For');
export const Within = word('Within');
export const InOrder = word('InOrder');
export const Holding = word('Holding');
export const Stage = word('Stage');
export const TimesWord = word('TimesWord');
export const As = word('As');
export const Expect = word('Expect');
export const Picture = word('Picture');
export const AndDiscard = mark('AndDiscard');

export const Not = word('Not');
export const Any = word('Any');
export const That = word('That');
export const AllOf = word('AllOf');
export const Everything = word('Everything');
/** `at least`, `at most` */
export const Bound = mark('Bound');
/** `up to`, `over`, `below`, `exactly`, `above` */
export const IntervalWord = word('IntervalWord');
export const Gives = word('Gives');
export const Because = word('Because');
export const In = word('In');
export const NamedOrder = word('NamedOrder');
export const Circle = word('Circle');
export const ToYield = word('ToYield');
export const When = word('When');
export const Ends = word('Ends');
/** A word that begins a stage of a plan: `loosen`, `back off`, `wait`, `again`. */
export const StageWord = word('StageWord');

export const HeaderText = word('HeaderText');
export const HeaderPeople = word('HeaderPeople');
export const HeaderTime = word('HeaderTime');
export const HeaderWear = word('HeaderWear');
export const HeaderTools = word('HeaderTools');
export const HeaderSupplies = word('HeaderSupplies');
export const HeaderClaims = word('HeaderClaims');
export const HeaderStartsWhere = word('HeaderStartsWhere');
export const HeaderDocument = word('HeaderDocument');
export const Issue = word('Issue');

export const VOCABULARY: readonly TokenType[] = vocabulary;

/** A token as scanned; the arranging pass may give it another type and join it with the next words. */
export class Lexeme implements IToken {
  image: string;
  startOffset: number;
  /** Inclusive, as Chevrotain has it. */
  endOffset: number;
  tokenType: TokenType;
  tokenTypeIdx: number;
  beginsLine: boolean;
  /** The words of the language it stands for (`held by`), or the number with a decimal point. */
  key: string;
  /** Begins a statement, a declaration or a file item. */
  starts = false;
  verb: Verb | undefined = undefined;
  /** A verb whose block holds outcomes. */
  outcomes = false;
  /** The word that still has to come: `let … cool`. */
  closing: string | undefined = undefined;

  constructor(image: string, start: number, end: number, tokenType: TokenType, beginsLine: boolean) {
    this.image = image;
    this.startOffset = start;
    this.endOffset = end - 1;
    this.tokenType = tokenType;
    this.tokenTypeIdx = tokenType.tokenTypeIdx!;
    this.beginsLine = beginsLine;
    this.key = image;
  }

  become(tokenType: TokenType, key: string = this.key): void {
    this.tokenType = tokenType;
    this.tokenTypeIdx = tokenType.tokenTypeIdx!;
    this.key = key;
  }
}

/** Whether the token may stand for a name. */
export function isWord(token: IToken): boolean {
  return WORDS[token.tokenTypeIdx] === true;
}

const WORDS: boolean[] = [];
for (const each of AnyWord.categoryMatches ?? []) WORDS[each] = true;
