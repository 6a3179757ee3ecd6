using System.Globalization;

namespace ReedClinic.Domain.Diagnosis;

/// <summary>A chance in words and as odds. The words are this program’s own choice.</summary>
public static class ChanceWords
{
    /// <summary>The chance in a word.</summary>
    /// <param name="chance">From 0 to 1.</param>
    public static string Word(double chance) => chance switch
    {
        >= 0.9 => "very likely",
        >= 0.6 => "likely",
        >= 0.4 => "as likely as not",
        >= 0.15 => "possible",
        >= 0.05 => "less likely",
        _ => "unlikely",
    };

    /// <summary>The chance as odds, such as “3 to 1 for” or “1 to 4 against it”; never “0” and never without end.</summary>
    /// <param name="chance">From 0 to 1.</param>
    public static string Odds(double chance)
    {
        if (double.IsNaN(chance))
        {
            return "can’t be told";
        }

        var (ratio, way) = chance >= 0.5 ? (chance / (1 - chance), "for") : ((1 - chance) / chance, "against");
        return ratio switch
        {
            < 1.15 => "even odds",
            > 99.5 => $"more than 99 to 1 {way}",
            < 1.75 => $"about 3 to 2 {way}",
            < 2.75 when ratio is >= 2.25 => $"about 5 to 2 {way}",
            _ => string.Create(CultureInfo.InvariantCulture, $"about {Math.Round(ratio):0} to 1 {way}"),
        };
    }

    /// <summary>The chance in hundredths.</summary>
    /// <param name="chance">From 0 to 1.</param>
    public static string Hundredths(double chance) => chance switch
    {
        < 0.005 => "under 1 in 100",
        > 0.995 => "over 99 in 100",
        _ => string.Create(CultureInfo.InvariantCulture, $"{chance * 100:0} in 100"),
    };
}
