import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';

/** What one sensor of temperature or humidity says. */
export interface AirReading {
  /** The kernel's name of it, so that two can be told apart. */
  readonly sensor: string;
  readonly tempC?: number;
  readonly humidityPercent?: number;
  /** When it was last read without a fault, by the machine's clock. */
  readonly atMs: number;
  /** Why there is no reading, or none that can be believed: a sentence that says what to do. */
  readonly fault?: string;
}

/** A shop is never out of these; what reads so is broken, wet, or not wired. */
const TEMP_RANGE_C: readonly [least: number, most: number] = [-40, 60];
const HUMIDITY_RANGE_PERCENT: readonly [least: number, most: number] = [0, 100];
/** A one-wire thermometer says 85 °C until it has measured for the first time (kernel documentation, w1_therm). */
const NOT_MEASURED_YET_C = 85;

/**
 * Reads temperature and humidity from the files of the Linux kernel's industrial-I/O and one-wire drivers (Documentation/ABI/testing/sysfs-bus-iio and sysfs-driver-w1_therm);
 * no vendor's library. What was last read well is kept with its time, so that an old reading can be told from a new one.
 */
export class AirSensors {
  readonly #root: string;
  readonly #now: () => number;
  readonly #last = new Map<string, AirReading>();

  /** `root`: where sysfs is; another folder for trying it out. */
  constructor(root = '/sys', now: () => number = Date.now) {
    this.#root = root;
    this.#now = now;
  }

  /** Every sensor that is fitted, by name; empty where there is none. */
  async read(): Promise<readonly AirReading[]> {
    const found = await Promise.all([...await this.#folders('bus/iio/devices', /^iio:device/).then((list) => list.map(readIio)), ...await this.#folders('bus/w1/devices', /^(?:10|22|28|3b|42)-/).then((list) => list.map(readOneWire))]);
    return found.filter((reading) => reading !== undefined).map((raw) => this.#judged(raw)).sort((a, b) => a.sensor.localeCompare(b.sensor));
  }

  #judged({ sensor, tempC, humidityPercent, fault }: RawReading): AirReading {
    const wrong = fault ?? unbelievable(tempC, humidityPercent);
    const last = this.#last.get(sensor);
    if (wrong !== undefined) return { ...(last ?? { sensor, atMs: 0 }), fault: `${sensor}: ${wrong}` };
    const reading = { sensor, atMs: this.#now(), ...(tempC === undefined ? {} : { tempC }), ...(humidityPercent === undefined ? {} : { humidityPercent }) };
    this.#last.set(sensor, reading);
    return reading;
  }

  async #folders(path: string, name: RegExp): Promise<readonly string[]> {
    const folder = join(this.#root, path);
    const names = await readdir(folder).catch(() => []);
    return names.filter((each) => name.test(each)).sort().map((each) => join(folder, each));
  }
}

interface RawReading {
  readonly sensor: string;
  readonly tempC?: number;
  readonly humidityPercent?: number;
  readonly fault?: string;
}

/** Undefined for a device that measures neither. Scaled values are in thousandths: of a degree Celsius, of a percent. */
async function readIio(folder: string): Promise<RawReading | undefined> {
  const files = await readdir(folder).catch(() => []);
  const [temp, humidity] = [channelOf(files, /^in_temp\d*_(?:input|raw)$/), channelOf(files, /^in_humidityrelative\d*_(?:input|raw)$/)];
  if (temp === undefined && humidity === undefined) return undefined;
  const sensor = ((await textOf(join(folder, 'name'))) ?? basename(folder)).trim() || basename(folder);
  const [thousandthsOfDegree, thousandthsOfPercent] = await Promise.all([scaled(folder, temp), scaled(folder, humidity)]);
  if (Number.isNaN(thousandthsOfDegree) || Number.isNaN(thousandthsOfPercent)) return { sensor, fault: 'it does not answer. Look at its wires, and start the kiosk again.' };
  return { sensor, ...(thousandthsOfDegree === undefined ? {} : { tempC: thousandthsOfDegree / 1000 }), ...(thousandthsOfPercent === undefined ? {} : { humidityPercent: thousandthsOfPercent / 1000 }) };
}

/** The first channel of a kind, without its ending; one that is scaled already is taken before a raw one. */
function channelOf(files: readonly string[], pattern: RegExp): string | undefined {
  const channels = files.filter((file) => pattern.test(file)).sort();
  return channels.find((file) => file.endsWith('_input')) ?? channels[0];
}

/** NaN where the file is there and cannot be read as a number. A raw value is (raw + offset) × scale. */
async function scaled(folder: string, file: string | undefined): Promise<number | undefined> {
  if (file === undefined) return undefined;
  const value = await numberIn(join(folder, file));
  if (!file.endsWith('_raw')) return value;
  const channel = file.slice(0, -'_raw'.length);
  const [offset, scale] = await Promise.all([sharedNumber(folder, channel, 'offset', 0), sharedNumber(folder, channel, 'scale', 1)]);
  return (value + offset) * scale;
}

/** A channel's own file, or the one that all channels of its kind share (in_temp_scale for in_temp0). */
async function sharedNumber(folder: string, channel: string, ending: string, otherwise: number): Promise<number> {
  for (const name of [`${channel}_${ending}`, `${channel.replace(/\d+$/, '')}_${ending}`]) {
    const value = await numberIn(join(folder, name));
    if (!Number.isNaN(value)) return value;
  }
  return otherwise;
}

/** Newer kernels have the value alone; older ones the bus's own words, with the checksum's verdict. */
async function readOneWire(folder: string): Promise<RawReading> {
  const sensor = basename(folder);
  const plain = await numberIn(join(folder, 'temperature'));
  if (!Number.isNaN(plain)) return { sensor, tempC: plain / 1000 };
  const words = (await textOf(join(folder, 'w1_slave'))) ?? '';
  const value = /\bYES\b[\s\S]*\bt=(-?\d+)/.exec(words)?.[1];
  if (value !== undefined) return { sensor, tempC: Number(value) / 1000 };
  return { sensor, fault: /\bNO\b/.test(words) ? 'its checksum is wrong. The wire is too long, or a contact is loose.' : 'it does not answer. Look at its wires.' };
}

function unbelievable(tempC: number | undefined, humidityPercent: number | undefined): string | undefined {
  if (tempC === NOT_MEASURED_YET_C) return 'it says 85 degrees, which means that it has not measured yet. If that stays, look at its supply wire.';
  if (tempC !== undefined && outside(tempC, TEMP_RANGE_C)) return `it says ${tempC.toFixed(1)} °C, which no shop has. Look at its wires.`;
  if (humidityPercent !== undefined && outside(humidityPercent, HUMIDITY_RANGE_PERCENT)) return `it says ${humidityPercent.toFixed(0)} percent humidity. From 0 to 100 was expected; a wet or worn sensor reads so.`;
  return undefined;
}

function outside(value: number, [least, most]: readonly [number, number]): boolean {
  return value < least || value > most;
}

async function numberIn(file: string): Promise<number> {
  const text = await textOf(file);
  return text === undefined || text.trim() === '' ? NaN : Number(text);
}

async function textOf(file: string): Promise<string | undefined> {
  return readFile(file, 'utf8').catch(() => undefined);
}
