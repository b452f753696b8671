export * from "./angle.ts";
export * from "./nut-factors.ts";
export * from "./preload.ts";
export * from "./problem.ts";
export * from "./strength.ts";
export * from "./strength-tables.ts";
export * from "./thread-tables.ts";
export * from "./threads.ts";
