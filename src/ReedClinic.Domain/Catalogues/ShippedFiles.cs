namespace ReedClinic.Domain.Catalogues;

/// <summary>The files of the catalogue that are part of the program.</summary>
internal static class ShippedFiles
{
    internal static Dictionary<string, string> Texts() => CatalogueReader.Files.ToDictionary(file => file, Text);

    internal static Catalogue Load()
    {
        var reading = CatalogueReader.Read(Texts());
        return reading.Catalogue
            ?? throw new InvalidOperationException($"The program’s own catalogue can’t be read. {string.Join(" ", reading.Problems)}");
    }

    private static string Text(string file)
    {
        using var stream = typeof(ShippedFiles).Assembly.GetManifestResourceStream($"ReedClinic.Domain.Catalogues.Shipped.{file}.tsv")
            ?? throw new InvalidOperationException($"The program’s own catalogue lacks {file}.tsv.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
