export * from './problem.ts';
export * from './thread-tables.ts';
export * from './threads.ts';
