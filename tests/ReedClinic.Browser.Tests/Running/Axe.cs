using System.Collections.Concurrent;
using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace ReedClinic.Browser.Tests.Running;

/// <summary>
/// axe-core, put into each page once; its rules are WCAG's, as Deque publishes them with the package, and WCAG 2.2's target size
/// (2.5.8), which axe leaves off by itself.
/// </summary>
public static class Axe
{
    private const string Run = """
        async (sheetsSeen) => {
          // Fetching every style sheet again, for one rule about turned screens, is the dearest part: once is enough for the same sheets.
          const sheets = [...document.styleSheets].map(sheet => sheet.href ?? sheet.ownerNode.textContent).join();
          const preload = !sheetsSeen.includes(sheets);
          const result = await axe.run(document, { preload, resultTypes: ['violations'], rules: { 'target-size': { enabled: true } } });
          const violations = result.violations
            .filter(v => v.impact === 'serious' || v.impact === 'critical')
            .map(v => `${v.impact}: ${v.id} (${v.help})\n    ` + v.nodes.slice(0, 4).map(n => n.html.slice(0, 160) + ' :: ' + (n.any[0]?.message ?? n.all[0]?.message ?? n.none[0]?.message ?? '')).join('\n    '));
          return { sheets, violations };
        }
        """;

    private static readonly ConcurrentDictionary<string, bool> SheetsSeen = new();

    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    public static async Task<IReadOnlyList<string>> ReadAsync(IPage page)
    {
        if (!await page.EvaluateAsync<bool>("typeof axe !== 'undefined'"))
        {
            await page.EvaluateAsync(Script);
        }

        var found = await page.EvaluateAsync<JsonElement>(Run, SheetsSeen.Keys.ToArray());
        SheetsSeen.TryAdd(found.GetProperty("sheets").GetString()!, true);
        return [.. found.GetProperty("violations").EnumerateArray().Select(violation => violation.GetString() ?? string.Empty)];
    }
}
