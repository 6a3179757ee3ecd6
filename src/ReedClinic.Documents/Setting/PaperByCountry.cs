namespace ReedClinic.Documents.Setting;

/// <summary>The size of paper that is usual somewhere.</summary>
public static class PaperByCountry
{
    // Unicode CLDR, supplemental data, measurementData, paperSize US-Letter: BZ CA CL CO CR GT MX NI PA PH PR SV US VE (from memory).
    private static readonly HashSet<string> UsLetter = new(StringComparer.OrdinalIgnoreCase)
    {
        "Belize", "Canada", "Chile", "Colombia", "Costa Rica", "Guatemala", "Mexico", "México", "Nicaragua", "Panama", "Panamá", "Philippines", "The Philippines",
        "Puerto Rico", "El Salvador", "Venezuela", "United States", "United States of America", "The United States", "USA", "US", "America",
    };

    /// <summary>The size that is usual in a country; A4 when nothing was said, or nothing that we know.</summary>
    /// <param name="country">The country, as somebody wrote it.</param>
    public static PaperSize Of(string? country) =>
        country is not null && UsLetter.Contains(country.Trim().Replace(".", "", StringComparison.Ordinal)) ? PaperSize.UsLetter : PaperSize.A4;
}
