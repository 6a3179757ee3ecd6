using System.Reflection;

namespace ReedClinic.Tests.Engines;

/// <summary>A table of who may do what, as it stands in docs/access; the test project embeds it.</summary>
internal static class AccessTable
{
    public static IReadOnlyList<AccessRow> Read(string file)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(file)!;
        using var reader = new StreamReader(stream);
        var lines = reader.ReadToEnd().Split('\n').Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split('\t')).ToList();
        var roles = lines[0][1..^1];
        return
        [
            .. lines.Skip(1).Select(line => new AccessRow(
                line[0],
                roles.Zip(line[1..(roles.Length + 1)]).ToDictionary(cell => cell.First, cell => cell.Second),
                line.Length > roles.Length + 1 ? line[roles.Length + 1] : "")),
        ];
    }
}

/// <param name="Name">What is done: a Book's operation, or a method and an address.</param>
/// <param name="Cells">What each role gets.</param>
/// <param name="Why">Why it is open, where it is.</param>
internal sealed record AccessRow(string Name, IReadOnlyDictionary<string, string> Cells, string Why);
