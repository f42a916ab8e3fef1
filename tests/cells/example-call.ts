export { exampleArguments } from "../../src/tools/fuzz/example-arguments.ts";
