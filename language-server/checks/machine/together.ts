/** All things that a fact is about, as one list: `the plate, the knob and the plate screws`. */
import type { Fact } from '../../model/facts.ts';
import { list } from '../../model/model.ts';
import { called } from '../grammatical.ts';

export function together({ subject, others }: Fact): string {
  return list([subject!, ...others!].map((one) => `the ${called(one)}`));
}
