import { foldersFrom } from '../../deploy/folders.ts';
import { startServer } from '../../deploy/server.ts';

/** The bench's server in a process of its own, for tests that kill it: site and port come as arguments, the folders as for `npm start`. */
const [site = '', port = '0'] = process.argv.slice(2);
const server = await startServer({ site, port: Number(port), folders: foldersFrom(process.env), keeper: { reserveBytes: Number(process.env['RESERVE_BYTES'] ?? 0) } });
console.log(`SERVING ${server.address}`);
