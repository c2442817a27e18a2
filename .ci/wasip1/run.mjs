// Runs a Go program built for wasip1 under node's own WASI, with the machine's
// files, arguments and environment:
//
//	node --stack-size=4096 run.mjs PROGRAM.wasm ARGUMENTS
import { readFile } from "node:fs/promises";
import process from "node:process";
import { WASI } from "node:wasi";

const [file, ...args] = process.argv.slice(2);
const wasi = new WASI({
	version: "preview1",
	args: [file, ...args],
	env: { ...process.env, PWD: process.cwd() },
	preopens: { "/": "/" },
	// The program's exit ends node there and then. Returned from instead, it is thrown
	// through the module's frames, and after a large run node 20 broke off at that
	// throw with a segmentation fault, whatever its stack.
	returnOnExit: false,
});
const module = await WebAssembly.compile(await readFile(file));
wasi.start(await WebAssembly.instantiate(module, wasi.getImportObject()));
