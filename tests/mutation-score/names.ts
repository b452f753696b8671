/**
 * What the tests use of vitest, for a run in one process: suites and tests are written into a list, `expect` is
 * vitest's own. Only what needs no file of snapshots and no hooks; a test file that wants more is not taken.
 */
import {
  ASYMMETRIC_MATCHERS_OBJECT,
  chai,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from '@vitest/expect';

export interface Registered {
  name: string;
  body: () => unknown;
}

/** How the switches of Stryker's instrumenter are reached. */
const global = globalThis as Record<string, unknown>;
global.__stryker__ ??= {};
export const switches = global.__stryker__ as {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  mutantCoverage?: { static: Record<string, number>; perTest: Record<string, Record<string, number>> };
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
};

export const registered: Registered[] = [];
export const COLLECTING = 'collecting';

const within: string[] = [];
const later: (() => void)[] = [];

export function fileBegins(name: string): void {
  switches.currentTestId = COLLECTING;
  within.push(name);
}

export function fileEnds(): void {
  switches.currentTestId = undefined;
  within.length = 0;
}

/** Runs the bodies of the suites, which were put off until all code was loaded. */
export function collect(): void {
  switches.currentTestId = COLLECTING;
  for (let suite = later.shift(); suite; suite = later.shift()) suite();
  switches.currentTestId = undefined;
}

type Body = (...values: never[]) => unknown;
type Define = (name: string, ...rest: readonly unknown[]) => void;

const bodyOf = (rest: readonly unknown[]): Body =>
  rest.find((one): one is Body => typeof one === 'function') ?? (() => undefined);

/** `each`, `skipIf` and `runIf` around a way to define. */
function withForms(define: Define) {
  return Object.assign(define, {
    each:
      (table: readonly unknown[]): Define =>
      (name, ...rest) => {
        const body = bodyOf(rest) as (...values: unknown[]) => unknown;
        table.forEach((row, index) => {
          define(`${name} ${index}`, () => (Array.isArray(row) ? body(...row) : body(row)));
        });
      },
    skipIf: (no: unknown): Define => (no ? () => {} : define),
    runIf: (yes: unknown): Define => (yes ? define : () => {}),
  });
}

export const test = withForms((name, ...rest) => {
  const body = bodyOf(rest) as () => unknown;
  registered.push({ name: [...within, `${registered.length} ${name}`].join(' > '), body });
});
export const it = test;

export const describe = withForms((name, ...rest) => {
  const path = [...within, name];
  const body = bodyOf(rest) as () => unknown;
  const suite = () => {
    within.splice(0, within.length, ...path);
    body();
    const inner = later.splice(0);
    for (const one of inner) one();
    within.length = 0;
  };
  later.push(suite);
});

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);
export const expect = Object.assign(
  (value: unknown, message?: string) => chai.expect(value, message),
  chai.expect,
  (globalThis as never)[ASYMMETRIC_MATCHERS_OBJECT],
);
(globalThis as never as Record<symbol, unknown>)[GLOBAL_EXPECT] = expect;
setState({ assertionCalls: 0 }, expect as never);
