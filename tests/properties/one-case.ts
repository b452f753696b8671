/**
 * The same job for one case only: branches are resolved in the tree, things that the case does not have are
 * taken out of the machine. What is left has no conditions, so that the sets of cases of the product play no
 * part in checking it.
 */
import type {
  Block,
  Clause,
  Condition,
  Machine,
  MachineItem,
  Procedure,
  Statement,
} from '../../grammar/syntax/tree.ts';

/** Values by the key of the axis: `variant v0`, `choice c1`, `seen "…"`, `outcome 123`. */
export type OneCase = ReadonlyMap<string, string | number>;

export function machineFor(machine: Machine, oneCase: OneCase): Machine {
  const items = machine.items.filter((item) => item.kind !== 'variant' && !absent(item, oneCase));
  return {
    ...machine,
    items: items.map((item) =>
      item.kind === 'declaration'
        ? { ...item, clauses: item.clauses.filter((clause) => clause.clause !== 'only') }
        : item,
    ),
  };
}

function absent(item: MachineItem, oneCase: OneCase): boolean {
  if (item.kind !== 'declaration') return false;
  return item.clauses.some(
    (clause: Clause) =>
      clause.clause === 'only' && clause.condition && holds(clause.condition, oneCase) === false,
  );
}

/** Names of things that the machine of this case does not have: steps on them are not done, questions answer no. */
export function absentFrom(machine: Machine, oneCase: OneCase): Set<string> {
  return new Set(
    machine.items.flatMap((item) =>
      item.kind === 'declaration' && item.name && absent(item, oneCase) ? item.name.text : [],
    ),
  );
}

export function procedureFor(
  procedure: Procedure,
  oneCase: OneCase,
  missing: ReadonlySet<string>,
): Procedure {
  return procedure.body ? { ...procedure, body: block(procedure.body, oneCase, missing) } : procedure;
}

function block(source: Block, oneCase: OneCase, missing: ReadonlySet<string>): Block {
  const statements: Statement[] = [];
  for (const statement of source.statements) statements.push(...resolve(statement, oneCase, missing));
  return { ...source, statements };
}

function resolve(statement: Statement, oneCase: OneCase, missing: ReadonlySet<string>): Statement[] {
  switch (statement.kind) {
    case 'when':
    case 'if': {
      const answer = statement.condition && holds(statement.condition, oneCase, missing);
      if (answer === undefined) {
        // A question about the state is answered by the state.
        return [
          {
            ...statement,
            ...(statement.body ? { body: block(statement.body, oneCase, missing) } : {}),
            ...(statement.otherwise ? { otherwise: block(statement.otherwise, oneCase, missing) } : {}),
          } as Statement,
        ];
      }
      const taken = answer ? statement.body : statement.otherwise;
      return taken ? block(taken, oneCase, missing).statements : [];
    }
    case 'choice':
      return [];
    case 'action': {
      const objects = statement.objects.filter((ref) => !missing.has(ref.name.text));
      if (objects.length < statement.objects.length)
        return objects.length === 0 ? [] : [{ ...statement, objects }];
      if (statement.outcomes.length === 0) return [statement];
      const index = oneCase.get(`outcome ${statement.start}`);
      const outcome = typeof index === 'number' ? statement.outcomes[index] : undefined;
      return [
        { ...statement, outcomes: [] },
        ...(outcome?.body ? block(outcome.body, oneCase, missing).statements : []),
      ];
    }
    case 'repeat':
      return [{ ...statement, ...(statement.body ? { body: block(statement.body, oneCase, missing) } : {}) }];
    default:
      return [statement];
  }
}

function holds(condition: Condition, oneCase: OneCase, missing?: ReadonlySet<string>): boolean | undefined {
  if (condition.kind === 'axis') {
    const value =
      oneCase.get(`variant ${condition.axis.text}`) ?? oneCase.get(`choice ${condition.axis.text}`);
    const among = condition.values.some((one) => one.text === value);
    return among !== condition.negated;
  }
  if (condition.kind === 'seen') return oneCase.get(`seen ${condition.text.value}`) === 0;
  if (condition.kind === 'state' && missing?.has(condition.ref.name.text)) return condition.negated;
  return undefined;
}
