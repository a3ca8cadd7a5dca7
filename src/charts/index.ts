export { ProfileChart, type ProfileChartProps } from './ProfileChart.tsx';
