import {
  BookOpen,
  CalendarCheck,
  ChartSpline,
  CookingPot,
  FileText,
  type LucideIcon,
  PackagePlus,
  Receipt,
  Scale,
  ScanSearch,
  ShoppingBasket,
  Split,
  Wine,
} from "lucide-react";

export type Destination = { to: string; label: string; icon: LucideIcon; onPhone: boolean };

/** The screens in the order of a bar's week; five of them stay in reach of the thumb. */
export const DESTINATIONS: readonly Destination[] = [
  { to: "/", label: "This week", icon: CalendarCheck, onPhone: true },
  { to: "/count", label: "Count", icon: Scale, onPhone: true },
  { to: "/sales", label: "Sales", icon: Receipt, onPhone: false },
  { to: "/variance", label: "Variance", icon: ScanSearch, onPhone: true },
  { to: "/report", label: "Owner’s report", icon: FileText, onPhone: false },
  { to: "/order", label: "Order", icon: ShoppingBasket, onPhone: true },
  { to: "/prep", label: "Prep", icon: CookingPot, onPhone: true },
  { to: "/forecast", label: "Forecast", icon: ChartSpline, onPhone: false },
  { to: "/plan", label: "What if", icon: Split, onPhone: false },
  { to: "/specs", label: "Specs", icon: BookOpen, onPhone: false },
  { to: "/stock", label: "Stock", icon: Wine, onPhone: false },
  { to: "/movements", label: "Deliveries & losses", icon: PackagePlus, onPhone: false },
];
