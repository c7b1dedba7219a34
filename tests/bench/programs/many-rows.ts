import { DEMO_CARS } from '../../../src/demo/demo-cars.ts';
import { demoVin } from '../../../src/demo/demo-vin.ts';
import { DAY } from '../../../src/domain/time/units.ts';

const HEADINGS =
  'VIN,Year,Make,Model,Trim,Miles,Lot,Venue,Sale,Closes,Price now,Increment,Retail low,Retail likely,Retail high,Recon low,Recon likely,Recon high,Title,Notes';
const VENUES = ['Saguaro Sale Yard', 'Saltmarsh Dealer Sale', 'Caliche Flats Auto Sale', 'Fogline Motor Sale'];
/** More lots are more weeks of them: the closes lie ahead, whenever this runs, and some 125 rows share each. */
const ROWS_AT_A_CLOSE = 125;

/** Invented lots as a CSV file with every column that a list may have; the same figures for the same `now`. */
export function manyRows(count: number, now: number): string {
  const lines = [HEADINGS];
  const closes = Math.max(160, Math.ceil(count / ROWS_AT_A_CLOSE));
  for (let i = 0; i < count; i++) {
    const car = DEMO_CARS[i % DEMO_CARS.length];
    if (car === undefined) continue;
    const close = new Date(now + 2 * 3_600_000 + ((i * 37) % closes) * (DAY / 20)).toISOString().slice(0, 16);
    const [retail, recon] = [Math.round(car.retail + ((i * 7919) % 4000) - 2000), 300 + ((i * 131) % 1400)];
    lines.push(
      [
        demoVin(car.maker, car.year, i % 900_000),
        car.year,
        car.make,
        car.model,
        car.trim,
        `"${(car.miles + ((i * 97) % 9000)).toLocaleString('en-US')}"`,
        100 + i,
        VENUES[i % VENUES.length],
        `Week ${1 + (i % 3)}`,
        `${close.replace('T', ' ')} UTC`,
        Math.round(retail * 0.4) - (Math.round(retail * 0.4) % 50),
        '',
        Math.round(retail * (1 - car.spread)),
        retail,
        Math.round(retail * (1 + car.spread)),
        Math.round(recon * 0.6),
        recon,
        recon * 2,
        i % 9 === 4 ? 'Rebuilt' : 'Clean',
        i % 4 === 0 ? '"Fleet unit, keys with the gate"' : '',
      ].join(','),
    );
  }
  return lines.join('\r\n');
}
