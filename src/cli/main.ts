/** The same core from a terminal. */
import process from 'node:process';
import { EXIT } from './exit';
import { runCli } from './program';

// A reader that has seen enough (`| head`) closes the pipe; that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(EXIT.good);
  throw error;
});
process.exitCode = await runCli(process.argv.slice(2), process);
