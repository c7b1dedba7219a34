// One file for the screens of a buyer's day: each by itself would cut what all screens share into dozens of small files.
export { LifeScreen } from '../history/life-screen.tsx';
export { WorksheetScreen } from '../lot/worksheet-screen.tsx';
export { NowScreen } from '../now/now-screen.tsx';
export { PlanScreen } from '../plan/plan-screen.tsx';
export { WeekScreen } from '../week/week-screen.tsx';
