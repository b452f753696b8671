/** `dowel/cases`: in how many cases each procedure of a file was followed, for the editor's status line. */
import type { Handler } from './handler.ts';

export interface FollowedCases {
  procedure: string;
  /** Every variant and every outcome, in all combinations that can come about; not exact above 2^53. */
  cases: number;
}

export const cases: Handler = {
  capabilities: {},
  register({ connection, view }) {
    connection.onRequest('dowel/cases', ({ uri }: { uri: string }): FollowedCases[] => {
      const seen = view();
      const file = seen.file(uri);
      return (file?.procedures ?? []).flatMap((procedure) => {
        const found = file && seen.machineOf(procedure, file);
        if (!found) return [];
        const { model } = found;
        const count = seen.at(procedure, file, model, procedure.end, (run) =>
          run.cases.count(run.cases.and(model.built, run.within)),
        );
        return [{ procedure: procedure.name?.text ?? '', cases: count }];
      });
    });
  },
};
