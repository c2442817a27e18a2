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
	returnOnExit: true,
});
const module = await WebAssembly.compile(await readFile(file));
process.exitCode = wasi.start(await WebAssembly.instantiate(module, wasi.getImportObject()));
