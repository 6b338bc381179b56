using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>Looks at a page in every theme on a phone, and in those that change sizes on a laptop, and gathers what is wrong with it.</summary>
public sealed class PageCheck
{
    private static readonly string[] Themes = ["light", "dark", "sun"];
    private static readonly (int Width, int Height)[] Screens = [(390, 844), (1440, 900)];

    // Field use asks for a contrast of 7:1, elsewhere 4.5:1 is enough.
    // axe was put into the page once; running it again from there is many times faster than putting it in again.
    private const string Axe = """
        strict => axe.run(document, { rules: { 'color-contrast-enhanced': { enabled: strict } }, runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'], resultTypes: ['violations'] })
          .then(found => found.violations.map(v => `${v.id}: ${v.nodes.map(n => n.html.slice(0, 160) + ' ' + (n.any[0]?.message ?? '')).join(' | ')}`))
        """;

    // What a thumb must hit: at least 44 px (64 px for the field), unless it is a link inside a sentence.
    private const string SmallTargets = """
        least => [...document.querySelectorAll('a[href], button, input, select, textarea, summary, label.chip')]
          .filter(e => !(e.matches('a') && getComputedStyle(e).display === 'inline') && !e.matches('.skip') && e.checkVisibility())
          .map(e => { const t = e.matches('.toggle input, .chip input') ? e.closest('label') : e; const r = t.getBoundingClientRect(); return { e, w: r.width, h: r.height }; })
          .filter(t => t.w > 0 && (t.h < least - 0.5 || t.w < least - 0.5))
          .map(t => `${t.e.tagName}.${t.e.className} "${(t.e.innerText || t.e.ariaLabel || t.e.type || '').slice(0, 30)}" ${t.w.toFixed(1)}×${t.h.toFixed(1)}`)
        """;

    private readonly List<string> _faults = [];

    /// <summary>What was wrong so far.</summary>
    public IReadOnlyList<string> Faults => _faults;

    /// <summary>Looks at the page. axe must have been put into it before, by one run of the axe library.</summary>
    /// <param name="page">The page; it ends at the size of a phone.</param>
    /// <param name="name">What it shows, for the messages and the pictures.</param>
    /// <param name="least">The least size of a target outside the theme for the sun, in CSS pixels.</param>
    public async Task LookAsync(IPage page, string name, int least = 44)
    {
        foreach (var (width, height) in Screens)
        {
            await page.SetViewportSizeAsync(width, height);
            foreach (var theme in Themes)
            {
                // Dark is light in other colours, and those are the same on every screen.
                if (theme == "dark" && width > Screens[0].Width)
                    continue;
                await page.EvaluateAsync("theme => { document.documentElement.dataset.theme = theme; }", theme);
                var where = $"{name}, {theme}, {width} px: ";
                if (Environment.GetEnvironmentVariable("FOUNDRESS_SHOTS") is { Length: > 0 } folder)
                    await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{theme}-{width}.png"), FullPage = true });
                // As tall as its content: a bar that stays at the edge of the screen covers whatever is behind it at the moment,
                // which scrolling uncovers; what it covers at the end of the page is a fault.
                var tall = await page.EvaluateAsync<int>("document.documentElement.scrollHeight");
                await page.SetViewportSizeAsync(width, Math.Max(height, tall));
                _faults.AddRange((await page.EvaluateAsync<string[]>(Axe, theme == "sun")).Select(fault => where + fault));
                _faults.AddRange((await page.EvaluateAsync<string[]>(SmallTargets, theme == "sun" ? 64 : least)).Select(fault => where + "small target " + fault));
                var overflow = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth");
                if (overflow > 0)
                    _faults.Add($"{where}{overflow} px wider than the screen");
                await page.SetViewportSizeAsync(width, height);
            }
        }

        await page.SetViewportSizeAsync(Screens[0].Width, Screens[0].Height);
    }
}
