/**
 * What a new procedure can begin with: `dowel/parts` (no params) lists the machines with the parts that come off;
 * `dowel/rebuild` with `{ uri, machine, part, target }` writes how the part comes off and goes back, as the text of a
 * file `target`, or says why that cannot be had.
 */
import { rebuild } from '../../features/rebuild.ts';
import type { Handler } from './handler.ts';

export interface MachineParts {
  uri: string;
  machine: string;
  title: string;
  parts: { name: string; title: string }[];
}

export interface RebuildAsked {
  uri: string;
  machine: string;
  part: string;
  /** Where the procedure will stand. */
  target: string;
}

/** One of the two. */
export interface RebuildAnswer {
  text?: string;
  reason?: string;
}

export const newProcedure: Handler = {
  capabilities: {},
  register({ connection, view, paths }) {
    connection.onRequest('dowel/parts', (): MachineParts[] =>
      paths().flatMap((uri) => {
        const file = view().file(uri);
        return (file?.machines ?? []).flatMap((machine): MachineParts[] => {
          if (!file || !machine.name) return [];
          const model = view().model(machine, file);
          const parts = [...model.byName.values()]
            .filter(({ type, fixed }) => type === 'part' && !fixed)
            .map(({ name, title }) => ({ name, title }));
          return [{ uri, machine: machine.name.text, title: model.title || machine.name.text, parts }];
        });
      }),
    );
    connection.onRequest(
      'dowel/rebuild',
      ({ uri, machine: name, part, target }: RebuildAsked): RebuildAnswer => {
        const seen = view();
        const file = seen.file(uri);
        const machine = file?.machines.find((one) => one.name?.text === name);
        if (!file || !machine) return { reason: `There is no machine \`${name}\` any more.` };
        const result = rebuild(seen, file, machine, part, target);
        return result.ok ? { text: result.text } : { reason: result.reason };
      },
    );
  },
};
