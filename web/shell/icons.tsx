import {
  BookOpen,
  CalendarCheck,
  ChartSpline,
  CookingPot,
  Ellipsis,
  FileText,
  History,
  Moon,
  PackagePlus,
  Receipt,
  Scale,
  ScanSearch,
  ShoppingBasket,
  Split,
  Sun,
  SunMoon,
  Wine,
} from "lucide-react";

const ICONS = {
  week: CalendarCheck,
  count: Scale,
  sales: Receipt,
  variance: ScanSearch,
  report: FileText,
  order: ShoppingBasket,
  prep: CookingPot,
  forecast: ChartSpline,
  plan: Split,
  specs: BookOpen,
  stock: Wine,
  movements: PackagePlus,
  history: History,
  more: Ellipsis,
  system: SunMoon,
  light: Sun,
  dark: Moon,
};
export type ShellIconName = keyof typeof ICONS;

/** The drawings of the frame; whatever they say stands beside them in words. */
export default function Icon({ name, size }: { name: ShellIconName; size: number }) {
  const Drawn = ICONS[name];
  return <Drawn aria-hidden="true" size={size} strokeWidth={1.6} />;
}
