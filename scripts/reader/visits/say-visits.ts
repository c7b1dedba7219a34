/** Prints what ten thousand visits to sites that the user has allowed come to, or as many as are asked for, from a number on. */
import { unattendedVisits } from './unattended-visits.ts';

export async function sayVisits([count = '10000', first = '1']: readonly string[]): Promise<void> {
  const visits = Number(count);
  const { readings, written, asked, wrong } = await unattendedVisits(visits, Number(first));
  for (const one of wrong) console.log(one);
  console.log(
    [
      '| visits | readings | figures written | asked first | written of another lot |',
      '| ---: | ---: | ---: | ---: | ---: |',
      `| ${visits} | ${readings} | ${written} | ${asked} | ${wrong.length} |`,
    ].join('\n'),
  );
}
