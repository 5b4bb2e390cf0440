// The suite for a window in which another extension says that it checks all YAML.
import { besideYamlExtension } from './kept-as-yaml.ts';
import { runTests } from './test.ts';

export function run(): Promise<void> {
  return runTests(besideYamlExtension, `${__filename}.json`);
}
