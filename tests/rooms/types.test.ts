import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { expect, test } from 'vitest';

/** What the compiler says about a text if it were a file of the project, as messages. */
function complaints(project: string, text: string): string[] {
  const path = fileURLToPath(new URL(`../../src/${project}`, import.meta.url));
  const host: ts.ParseConfigFileHost = { ...ts.sys, onUnRecoverableConfigFileDiagnostic: () => undefined };
  const { options } = ts.getParsedCommandLineOfConfigFile(path, {}, host)!;
  const compiler = ts.createCompilerHost(options);
  const file = fileURLToPath(new URL('../../src/water/of-this-test.ts', import.meta.url));
  const { getSourceFile, fileExists } = compiler;
  compiler.fileExists = (name) => name === file || fileExists(name);
  compiler.getSourceFile = (name, version, ...rest) =>
    name === file ? ts.createSourceFile(name, text, version) : getSourceFile(name, version, ...rest);
  const program = ts.createProgram([file], { ...options, incremental: false, tsBuildInfoFile: undefined }, compiler);
  const source = program.getSourceFile(file);
  const found = [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)];
  return found.map((one) => ts.flattenDiagnosticMessageText(one.messageText, '\n'));
}

test('the project of the pure rooms knows no page, no clock, no output and no Node', () => {
  const names = ['document', 'window', 'performance', 'setTimeout', 'console', 'indexedDB', 'process', 'Buffer'];
  const found = complaints('tsconfig.pure.json', names.map((name) => `void ${name};`).join('\n'));
  for (const [at, name] of names.entries()) expect(found[at]).toMatch(new RegExp(`Cannot find name '${name}'`));
});

test('the project of the page knows no Node', () => {
  expect(complaints('tsconfig.browser.json', 'void document; void process;')).toEqual([
    expect.stringMatching(/Cannot find name 'process'/),
  ]);
});

test('the project of the command knows no page', () => {
  expect(complaints('tsconfig.node.json', 'void process; void document;')).toEqual([
    expect.stringMatching(/Cannot find name 'document'/),
  ]);
});

test.each([
  ['enum', 'export enum Suit { Wet, Dry }'],
  ['namespace', 'export namespace Suit { export const wet = 1; }'],
  ['parameter property', 'export class Suit { constructor(readonly wet: boolean) {} }'],
])('syntax that types alone cannot explain is refused: %s', (_, text) => {
  expect(complaints('tsconfig.pure.json', text)).toEqual([expect.stringMatching(/erasableSyntaxOnly/)]);
});
