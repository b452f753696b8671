/** Whole files: what may stand at their top, in any order. */
import type { FileItem, Use } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import type { ParserOptions } from './lean.ts';
import { ProcedureRules } from './procedure.ts';

export class DowelParser extends ProcedureRules {
  constructor(options: ParserOptions = {}) {
    super(options);
    this.performSelfAnalysis();
  }

  readonly file = this.RULE('file', (): FileItem[] => {
    const items: FileItem[] = [];
    this.MANY(() =>
      this.OR({
        IGNORE_AMBIGUITIES: true,
        DEF: [
          {
            ALT: () => {
              const item: FileItem = this.OR1([
                { ALT: () => this.SUBRULE(this.use) },
                { ALT: () => this.SUBRULE(this.machine) },
                { ALT: () => this.SUBRULE(this.procedure) },
              ]);
              if (!this.RECORDING_PHASE) items.push(item);
            },
          },
          { ALT: () => this.SUBRULE(this.sharedItem, { ARGS: [items as never] }) },
          { ALT: () => this.SUBRULE(this.strayItem, { ARGS: [items, 'file'] }) },
          { ALT: () => this.SUBRULE(this.strayFileBlock) },
        ],
      }),
    );
    return items;
  });

  private readonly use = this.RULE('use', (): Use => {
    const start = this.CONSUME(T.UseStart).startOffset;
    const use: Use = { kind: 'use', start, end: start };
    this.OPTION(() => {
      use.path = this.SUBRULE(this.string);
    });
    if (!use.path) this.missing('The file is missing after “use”.', 'use "tarn-t40.dowel"');
    use.end = this.lastEnd();
    return use;
  });

  private readonly strayFileBlock = this.RULE('strayFileBlock', () => {
    this.wrong(
      this.next(),
      'syntax',
      'This block belongs to nothing; a file has machines and procedures at its top.',
    );
    this.SUBRULE(this.skipBlock);
  });
}
