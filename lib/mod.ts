/**
 * Lakeproof: evidence from the water for people who build their own hydrofoils. This is what notebooks import.
 *
 * @module
 */
export * from "./base/answers.ts";
export * from "./base/errors.ts";
export * from "./base/finding.ts";
export * from "./base/quantity.ts";
export * from "./base/records.ts";
export * from "./base/session.ts";
export * from "./base/tables.ts";
