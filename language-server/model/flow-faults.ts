/**
 * What is wrong with the flow of a text as it is written: scales that leave a hole, conditions that can never hold,
 * repeats without an end, findings nobody acts on, values of different kinds worked into one, references to another
 * thing. Nothing is carried out here; what the state of the machine shows is the execution's business.
 */
import type { MachineItem, Name, Statement } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { conditionFaults, sentenceFaults } from './flow-conditions.ts';
import { inspectionFaults, mayLackAnswer } from './flow-inspections.ts';
import { expressionKind, KnownKinds, lookUpFaults, scaleKind } from './flow-kinds.ts';
import { loopFaults } from './flow-loops.ts';
import { unknownIn } from './flow-names.ts';
import { referenceFaults } from './flow-references.ts';
import { outcomeFaults, tableFaults, type Where } from './flow-scales.ts';
import { locate } from './flow-walk.ts';
import type { Model } from './model.ts';
import type { Survey } from './survey.ts';
import { evaluate, type Names } from './values.ts';

/**
 * Facts about a procedure: `range-gap`, `range-overlap`, `range-impossible`, `finding-without-action`,
 * `outcome-missing`, `outcome-goes-on`, `loop-cannot-end`, `loop-without-limit`, `loop-runs-out`, `unit-wrong-kind`, `reference-wrong`.
 */
export function flowFaults(model: Model, survey: Survey, file: Where): Fact[] {
  const { body } = survey.procedure;
  const facts: Fact[] = survey.each('flow', [], (one) => [
    ...conditionFaults(one, file.path),
    ...(one.kind === 'repeat' ? loopFaults(one, file.path) : []),
    ...(one.kind === 'action' ? sentenceFaults(one.text, file.path) : []),
  ]);
  for (const action of survey.each('inspections', [], (one) => (mayLackAnswer(one) ? [one] : []))) {
    const one = locate(body, action);
    if (one) facts.push(...inspectionFaults(one, file.path));
  }
  const valued = survey.each('values', [], (one) => (isAboutValues(one) ? [one] : []));
  const own = new Map(
    valued.flatMap((one) =>
      one.kind === 'value' && one.name ? [[one.name.text, one.expression] as const] : [],
    ),
  );
  const names: Names = (name) => own.get(name) ?? model.values.get(name)?.expression;
  const kinds = new KnownKinds(model);
  for (const statement of valued) {
    if (statement.kind === 'value' && statement.expression) {
      const known = expressionKind(statement.expression, kinds.of, file, facts);
      if (statement.name) kinds.learn(statement.name.text, known);
    }
    if (statement.kind !== 'action') continue;
    facts.push(...outcomeFaults(statement, names, file));
    facts.push(...lookUpFaults(statement, model.tables, kinds.of, file));
    const intervals = statement.outcomes.flatMap((outcome) => outcome.intervals);
    const scale = scaleKind(intervals, 'The outcomes of one measurement', kinds.of, file, facts);
    const known = statement.expression ? expressionKind(statement.expression, kinds.of, file, facts) : scale;
    const tail = statement.tails.find(({ tail: word }) => word === 'as');
    const name = tail?.tail === 'as' ? tail.name : statement.expression && statement.topic;
    if (name) kinds.learn(name.text, known);
  }
  facts.push(...referenceFaults(model, survey, file));
  return facts;
}

/** Values are declared, measured, worked with or looked up in it. */
function isAboutValues(statement: Statement): boolean {
  if (statement.kind === 'value') return true;
  if (statement.kind !== 'action') return false;
  return (
    statement.outcomes.length > 0 ||
    statement.expression !== undefined ||
    statement.tails.some(({ tail }) => tail === 'as' || tail === 'by' || tail === 'from')
  );
}

/**
 * Facts about the values and tables that a machine declares or a file shares: `range-gap`, `range-overlap`,
 * `range-impossible`, `unit-wrong-kind`, `unknown-name`, `use-cycle`.
 */
export function declaredFlowFaults(model: Model, items: readonly MachineItem[], file: Where): Fact[] {
  const facts: Fact[] = [];
  const names: Names = (name) => model.values.get(name)?.expression;
  const kinds = new KnownKinds(model);
  for (const item of items) {
    if (item.kind === 'value' && item.expression) {
      facts.push(...unknownIn([item.expression], model, 'value', file.path));
      expressionKind(item.expression, kinds.of, file, facts);
      if (item.name) facts.push(...circle(item.name, names, file.path));
    }
    if (item.kind !== 'table') continue;
    facts.push(...tableFaults(item, names, file));
    facts.push(
      ...unknownIn(
        item.rows.flatMap(({ gives }) => gives),
        model,
        'thing',
        file.path,
      ),
    );
    scaleKind(
      item.rows.map(({ interval }) => interval),
      'The rows of a table',
      kinds.of,
      file,
      facts,
    );
  }
  return facts;
}

/** A value that is computed from itself; not one that only leads to such a value. */
function circle(name: Name, names: Names, path: string): Fact[] {
  const { start, end, text } = name;
  const ref = { name, positions: [], start, end };
  const outcome = evaluate({ kind: 'name', ref, start, end }, names);
  if (outcome.ok || outcome.problem.code !== 'circular-value' || outcome.problem.name !== text) return [];
  return [{ check: 'use-cycle', at: { file: path, start, end }, words: { name: text, of: 'value' } }];
}
