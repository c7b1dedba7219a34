/** An invented kind of vehicle, with what a clean one of this model year brings at the dealer's. */
export interface DemoCar {
  readonly maker: string;
  readonly make: string;
  readonly model: string;
  readonly trim: string;
  readonly year: number;
  readonly miles: number;
  readonly retail: number;
  /** Low and high lie this share below and above likely. */
  readonly spread: number;
}

const car = (
  maker: string,
  make: string,
  model: string,
  trim: string,
  year: number,
  miles: number,
  retail: number,
  spread: number,
): DemoCar => ({ maker, make, model, trim, year, miles, retail, spread });

export const DEMO_CARS: readonly DemoCar[] = [
  car('1LX', 'Larkspur', 'Hauler 20', 'Crew cab', 2021, 61_400, 31_900, 0.1),
  car('1LX', 'Larkspur', 'Hauler 20', 'Regular cab', 2019, 84_200, 23_400, 0.1),
  car('1LX', 'Larkspur', 'Hauler 30', 'Dual rear wheels', 2020, 72_900, 36_500, 0.12),
  car('1LX', 'Larkspur', 'Parcelman', 'High roof', 2022, 39_900, 33_200, 0.08),
  car('1LX', 'Larkspur', 'Parcelman', 'Low roof', 2018, 118_300, 15_900, 0.14),
  car('5WK', 'Merrow', 'Boxline 12', '', 2019, 96_700, 22_800, 0.12),
  car('5WK', 'Merrow', 'Boxline 16', 'Lift gate', 2020, 88_100, 31_400, 0.13),
  car('5WK', 'Merrow', 'Flatbed 30', 'Stake sides', 2017, 131_000, 19_700, 0.16),
  car('5WK', 'Merrow', 'Cutaway 40', 'Service body', 2021, 54_600, 42_300, 0.12),
  car('4HJ', 'Quillback', 'Loadmate', 'Cargo', 2023, 28_400, 30_600, 0.07),
  car('4HJ', 'Quillback', 'Loadmate', 'Crew', 2021, 47_800, 27_900, 0.09),
  car('4HJ', 'Quillback', 'Townlet', 'Cargo', 2020, 69_300, 17_600, 0.1),
  car('4HJ', 'Quillback', 'Townlet', 'Refrigerated', 2019, 92_500, 20_900, 0.18),
  car('7TR', 'Ollerton', 'Paddock', '4×4', 2022, 33_700, 34_800, 0.08),
  car('7TR', 'Ollerton', 'Paddock', '4×2', 2018, 104_600, 18_300, 0.11),
  car('7TR', 'Ollerton', 'Utility 15', 'Ladder rack', 2020, 77_700, 24_600, 0.1),
];
