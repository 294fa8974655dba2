/**
 * From the kernel's broadcast messages to the outputs of a cell, the same bytes every time.
 *
 * @module
 */
import { stripVTControlCharacters } from "node:util";
import {
  type ErrorOutput,
  isJsonMedia,
  type Json,
  type JsonObject,
  type MimeBundle,
  type Output,
} from "../notebook.ts";
import type { Message } from "./message.ts";

/**
 * The outputs that these broadcasts make up, in the order sent, with three exceptions that keep them stable: pieces of
 * one stream that follow each other are joined, errors stand last (their place among the streams is left to chance),
 * and a display that is updated changes where it stands.
 *
 * @param messages everything broadcast for the cell
 * @param executionCount the cell's number, for its result
 * @returns outputs in the form of the notebook format, without terminal colours
 */
export function outputsOf(messages: readonly Message[], executionCount: number): Output[] {
  let outputs: Output[] = [];
  const errors: Output[] = [];
  const shown = new Map<string, number[]>();
  let clearNext = false;
  const add = (output: Output) => {
    if (clearNext) outputs = [];
    clearNext = false;
    const last = outputs.at(-1);
    if (
      output.output_type === "stream" && last?.output_type === "stream" && last.name === output.name
    ) {
      outputs[outputs.length - 1] = { ...last, text: last.text + output.text };
    } else {
      outputs.push(output);
    }
  };
  for (const { header, content } of messages) {
    switch (header.msg_type) {
      case "stream":
        add({
          output_type: "stream",
          name: content["name"] === "stderr" ? "stderr" : "stdout",
          text: stripVTControlCharacters(String(content["text"])),
        });
        break;
      case "display_data": {
        add({ output_type: "display_data", ...bundleOf(content) });
        const id = displayId(content);
        if (id !== null) shown.set(id, [...shown.get(id) ?? [], outputs.length - 1]);
        break;
      }
      case "update_display_data":
        for (const index of shown.get(displayId(content) ?? "") ?? []) {
          if (outputs[index]?.output_type === "display_data") {
            outputs[index] = { output_type: "display_data", ...bundleOf(content) };
          }
        }
        break;
      case "execute_result":
        add({
          output_type: "execute_result",
          execution_count: executionCount,
          ...bundleOf(content),
        });
        break;
      case "error":
        errors.push(errorOutput(content));
        break;
      case "clear_output":
        if (content["wait"] === true) clearNext = true;
        else outputs = [];
        shown.clear();
        break;
    }
  }
  return [...outputs, ...errors];
}

/**
 * An error as an output of a cell.
 *
 * @param content of the kernel's message
 * @returns name, message and traceback without terminal colours
 */
export function errorOutput(content: JsonObject): ErrorOutput {
  const traceback = Array.isArray(content["traceback"]) ? content["traceback"] : [];
  return {
    output_type: "error",
    ename: String(content["ename"]),
    evalue: stripVTControlCharacters(String(content["evalue"])),
    traceback: traceback.map((line: Json) => stripVTControlCharacters(String(line))),
  };
}

function bundleOf(content: JsonObject): { data: MimeBundle; metadata: JsonObject } {
  const data = Object.entries((content["data"] ?? {}) as JsonObject).map(([media, value]) => [
    media,
    typeof value === "string" && !isJsonMedia(media) ? stripVTControlCharacters(value) : value,
  ]);
  return {
    data: Object.fromEntries(data),
    metadata: (content["metadata"] ?? {}) as JsonObject,
  };
}

function displayId(content: JsonObject): string | null {
  const id = ((content["transient"] ?? {}) as JsonObject)["display_id"];
  return typeof id === "string" ? id : null;
}
