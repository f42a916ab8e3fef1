/** Opens the built page in a browser as Excel would, with stand-ins for office.js, and watches what it must not do. */
import type { Browser, Page } from "playwright-core";

/** What the tests need of Microsoft's two objects: functions are kept by id, errors carry code and message. */
const OFFICE_STUB = `
  globalThis.associated = new Map();
  globalThis.violations = [];
  addEventListener("securitypolicyviolation", (event) => violations.push(event.effectiveDirective));
  globalThis.Office = { onReady: () => Promise.resolve({ host: "Excel", platform: "OfficeOnline" }) };
  globalThis.CustomFunctions = {
    Error: class { constructor(code, message) { this.code = code; if (message !== undefined) this.message = message; } },
    associate: (id, run) => associated.set(id, run),
  };`;

export interface Opened {
  readonly page: Page;
  /** Addresses asked for since the last look, office.js left out. */
  requests(): string[];
  /** Errors and warnings the page wrote or threw. */
  readonly complaints: string[];
  close(): Promise<void>;
}

interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: "light" | "dark";
  readonly fragment?: string;
}

export async function openedPane(browser: Browser, origin: string, look: Look = {}): Promise<Opened> {
  const { width = 360, height = 800, colorScheme = "light", fragment = "" } = look;
  const context = await browser.newContext({ viewport: { width, height }, colorScheme });
  const page = await context.newPage();
  const complaints: string[] = [];
  const asked: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (problem) => complaints.push(String(problem)));
  context.on("request", (request) => asked.push(request.url()));
  await page.route("https://appsforoffice.microsoft.com/**", (route) =>
    route.fulfill({ contentType: "text/javascript", body: OFFICE_STUB }),
  );
  await page.goto(`${origin}/taskpane.html${fragment}`);
  await page.waitForFunction(() => document.querySelectorAll("summary").length > 0);
  const requests = () => asked.splice(0).filter((url) => !url.startsWith("https://appsforoffice.microsoft.com/"));
  return { page, requests, complaints, close: () => context.close() };
}
