using System.Text.Json;

namespace ReedClinic.Architecture.Tests.House;

/// <summary>The program is given out with other people's packages: the licence of each is known and written down.</summary>
public static class Licences
{
    /// <summary>The list, which <c>deploy/supply-chain.sh</c> writes.</summary>
    public const string List = "docs/licences/packages.md";

    /// <summary>What the program was resolved to.</summary>
    public const string Lock = "src/ReedClinic.Web/packages.lock.json";

    // Work while it is built and aren't given out.
    private static readonly string[] ForBuilding = ["Microsoft.AspNetCore.App.Internal.Assets", "Microsoft.CodeAnalysis.BannedApiAnalyzers"];

    /// <summary>Packages whose licence isn't in the list at the version that is locked.</summary>
    /// <param name="locked">The lock file's text.</param>
    /// <param name="list">The list's text.</param>
    public static IEnumerable<string> Unlisted(string locked, string list)
    {
        var known = list.Split('\n').Select(line => line.Split('|', StringSplitOptions.TrimEntries))
            .Where(cells => cells.Length == 5 && cells[3] is not ("" or "unknown")).Select(cells => $"{cells[1]} {cells[2]}").ToHashSet(StringComparer.Ordinal);
        using var read = JsonDocument.Parse(locked);
        return [.. read.RootElement.GetProperty("dependencies").EnumerateObject().SelectMany(target => target.Value.EnumerateObject())
            .Where(package => package.Value.GetProperty("type").GetString() != "Project" && !ForBuilding.Contains(package.Name))
            .Select(package => $"{package.Name} {package.Value.GetProperty("resolved").GetString()}").Distinct()
            .Where(package => !known.Contains(package)).Select(package => $"{List}: {package} is missing; run deploy/supply-chain.sh")];
    }
}
