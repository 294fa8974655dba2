/**
 * What a session's `datapackage.json` must hold, as a JSON schema with types: the part of Data Package 2.0 that we use.
 *
 * @module
 */
import { Ajv, type JSONSchemaType } from "ajv";
import { type Failure } from "../base/quantity.ts";

/** A column, as the descriptor tells it. */
export interface DescriptorField {
  readonly name: string;
  readonly type?: string;
  readonly description?: string;
  /** Unit of the column: a property of our own, since the standard has none. */
  readonly unit?: string;
}

/** A table, as the descriptor tells it. */
export interface DescriptorResource {
  readonly name: string;
  readonly path?: string;
  readonly schema?: { readonly fields: readonly DescriptorField[] };
}

/** The descriptor of a session folder. */
export interface Descriptor {
  readonly name?: string;
  readonly title?: string;
  /** Version of the session folder's contract: a property of our own. */
  readonly contract?: number;
  /** True for data that nobody measured: a property of our own. */
  readonly invented?: boolean;
  readonly resources: readonly DescriptorResource[];
}

/** What ajv checks; the keys follow the types above, or this file does not compile. */
const SCHEMA: JSONSchemaType<Descriptor> = {
  type: "object",
  required: ["resources"],
  properties: {
    name: { type: "string", nullable: true },
    title: { type: "string", nullable: true },
    contract: { type: "integer", minimum: 1, nullable: true },
    invented: { type: "boolean", nullable: true },
    resources: {
      type: "array",
      minItems: 1,
      items: {
        type: "object",
        required: ["name"],
        properties: {
          name: { type: "string", minLength: 1 },
          path: { type: "string", nullable: true },
          schema: {
            type: "object",
            required: ["fields"],
            nullable: true,
            properties: {
              fields: {
                type: "array",
                minItems: 1,
                items: {
                  type: "object",
                  required: ["name"],
                  properties: {
                    name: { type: "string", minLength: 1 },
                    type: { type: "string", nullable: true },
                    description: { type: "string", nullable: true },
                    unit: { type: "string", nullable: true },
                  },
                },
              },
            },
          },
        },
      },
    },
  },
};

const validate = new Ajv({ allErrors: true }).compile(SCHEMA);

/** A descriptor that holds, or the places where it does not. */
export type ParsedDescriptor = { readonly ok: true; readonly descriptor: Descriptor } | Failure;

/**
 * Reads a descriptor.
 *
 * Source: Data Package 2.0 (2024), sections Data Package, Data Resource and Table Schema. `unit`, `contract` and
 * `invented` are custom properties, which the standard allows.
 *
 * @param text JSON
 * @returns the descriptor, or a sentence that names every place that does not fit
 */
export function parseDescriptor(text: string): ParsedDescriptor {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\ufeff/, ""));
  } catch {
    return { ok: false, reason: "it is no JSON" };
  }
  if (validate(json)) return { ok: true, descriptor: json };
  const places = (validate.errors ?? []).map((error) =>
    `${error.instancePath === "" ? "the whole" : error.instancePath} ${error.message ?? "is wrong"}`
  );
  return { ok: false, reason: [...new Set(places)].join("; ") };
}
