namespace ReedClinic.Data.Tests.Access;

/// <summary>The table of who may do what, as it stands in docs/access.</summary>
internal static class AccessTable
{
    public static IReadOnlyList<Row> Rows { get; } = Read();

    private static List<Row> Read()
    {
        using var stream = typeof(AccessTable).Assembly.GetManifestResourceStream("books.tsv")!;
        using var reader = new StreamReader(stream);
        var lines = reader.ReadToEnd().Split('\n').Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split('\t')).ToList();
        var roles = lines[0][1..6];
        return
        [
            .. lines.Skip(1).Select(line => new Row(
                line[0],
                roles.Zip(line[1..6]).ToDictionary(cell => cell.First, cell => cell.Second),
                line.Length > 6 ? line[6] : "")),
        ];
    }

    /// <param name="Name">Book and operation.</param>
    /// <param name="Cells">What each role gets.</param>
    /// <param name="Why">Why it is open, where it is.</param>
    internal sealed record Row(string Name, IReadOnlyDictionary<string, string> Cells, string Why);
}
