import { spawn } from 'node:child_process';
import { root } from './root.mjs';

/** Runs a command in the checkout with our terminal; gives its exit status. */
export const run = (command, args, options = {}) =>
  new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32', ...options });
    child.once('error', (error) => {
      console.error(`${command}: ${error.message}`);
      resolve(127);
    });
    child.once('exit', (code, signal) => resolve(code ?? (signal ? 130 : 1)));
  });

/** Runs a program of node_modules/.bin by its name. */
export const runTool = (tool, args, options) => run('npx', ['--no-install', tool, ...args], options);
