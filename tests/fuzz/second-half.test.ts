import { fuzzes } from './range.ts';

fuzzes(10_001, 10_000);
