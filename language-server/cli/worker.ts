/**
 * A thread beside the first one: takes files off the common list, checks them, and hands the results back when none is
 * left. Started only by ./check-files.ts.
 */
import { parentPort, workerData } from 'node:worker_threads';
import { type Order, taken } from './check-files.ts';
import { disk } from './disk.ts';
import { housesOf } from './houses.ts';
import { namesIn } from './names.ts';

export async function work(): Promise<void> {
  const order = workerData as Order;
  const names = namesIn(process.cwd());
  const texts = disk(names);
  const houses = await housesOf(order.files, texts, names, order.options);
  texts.houseOf = houses.of;
  parentPort?.postMessage(await taken(order, texts));
}
