import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { AirSensors } from '../../deploy/airSensors.ts';
import { startServer } from '../../deploy/server.ts';

const folders: string[] = [];
afterEach(() => { for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true }); });

/** A tree of files as the kernel shows them. */
function sysfs(files: Readonly<Record<string, string>>): string {
  const root = mkdtempSync(join(tmpdir(), 'sysfs-'));
  folders.push(root);
  write(root, files);
  return root;
}

function write(root: string, files: Readonly<Record<string, string>>): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), `${text}\n`);
  }
}

const IIO = 'bus/iio/devices/iio:device0';
const WIRE = 'bus/w1/devices/28-0316a2795aff';

describe('a sensor of the air', () => {
  it('is not missed where there is none', async () => {
    expect(await new AirSensors(sysfs({})).read()).toEqual([]);
  });

  it('gives temperature and humidity that the kernel has scaled: thousandths of a degree and of a percent (kernel ABI, sysfs-bus-iio)', async () => {
    const root = sysfs({ [`${IIO}/name`]: 'shop air', [`${IIO}/in_temp_input`]: '5125', [`${IIO}/in_humidityrelative_input`]: '81000' });
    expect(await new AirSensors(root, () => 7).read()).toEqual([{ sensor: 'shop air', tempC: 5.125, humidityPercent: 81, atMs: 7 }]);
  });

  it('gives raw values as (raw + offset) × scale, the scale being shared by its channels', async () => {
    const root = sysfs({ [`${IIO}/name`]: 'raw one', [`${IIO}/in_temp0_raw`]: '1000', [`${IIO}/in_temp_offset`]: '-200', [`${IIO}/in_temp_scale`]: '10', [`${IIO}/in_humidityrelative_raw`]: '500', [`${IIO}/in_humidityrelative_scale`]: '100' });
    expect(await new AirSensors(root, () => 7).read()).toEqual([{ sensor: 'raw one', tempC: 8, humidityPercent: 50, atMs: 7 }]);
  });

  it('on one wire is read from new kernels and old ones', async () => {
    const old = 'bus/w1/devices/28-000000000001';
    const root = sysfs({ [`${WIRE}/temperature`]: '12437', [`${old}/w1_slave`]: '72 01 4b 46 7f ff 0e 10 57 : crc=57 YES\n72 01 4b 46 7f ff 0e 10 57 t=23125' });
    expect((await new AirSensors(root).read()).map(({ tempC }) => tempC)).toEqual([23.125, 12.437]);
  });

  it('that is something else, an accelerometer say, is left alone', async () => {
    expect(await new AirSensors(sysfs({ [`${IIO}/in_accel_x_raw`]: '3', [`${IIO}/name`]: 'accelerometer' })).read()).toEqual([]);
  });

  it.each([
    ['does not answer', { [`${IIO}/name`]: 'x', [`${IIO}/in_temp_input`]: 'rubbish' }, /does not answer/],
    ['is not wired', { [`${IIO}/name`]: 'x', [`${IIO}/in_temp_input`]: '-127000' }, /-127\.0 °C, which no shop has/],
    ['is wet', { [`${IIO}/name`]: 'x', [`${IIO}/in_temp_input`]: '12000', [`${IIO}/in_humidityrelative_input`]: '131000' }, /131 percent humidity/],
    ['has not measured yet', { [`${WIRE}/temperature`]: '85000' }, /has not measured yet/],
    ['has a loose contact', { [`${WIRE}/w1_slave`]: 'ff ff : crc=c9 NO\nff ff t=-62' }, /checksum is wrong/],
  ])('that %s is told, with what to do, and gives no figure', async (_, files, words) => {
    const [reading] = await new AirSensors(sysfs(files)).read();
    expect(reading?.fault).toMatch(words);
    expect(reading?.tempC).toBeUndefined();
  });

  it('that fails later keeps what it last said, with the time it said it', async () => {
    const root = sysfs({ [`${WIRE}/temperature`]: '12000' });
    let now = 1000;
    const sensors = new AirSensors(root, () => now);
    await sensors.read();
    write(root, { [`${WIRE}/temperature`]: '85000' });
    now = 90_000;
    expect(await sensors.read()).toEqual([expect.objectContaining({ tempC: 12, atMs: 1000, fault: expect.stringContaining('not measured') as string })]);
  });
});

describe('the kiosk', () => {
  it('is told of the sensors by the local server, with the machine’s time', async () => {
    const root = sysfs({ [`${WIRE}/temperature`]: '12437' });
    const server = await startServer({ site: root, port: 0, sysfs: root, folders: { journal: join(root, 'journal'), pieces: join(root, 'pieces'), models: join(root, 'models') }, keeper: { reserveBytes: 0 } });
    try {
      const answer = await fetch(`${server.address}/api/air`);
      expect(await answer.json()).toEqual({ nowMs: expect.any(Number) as number, sensors: [{ sensor: '28-0316a2795aff', tempC: 12.437, atMs: expect.any(Number) as number }] });
    } finally {
      await server.close();
    }
  });
});
