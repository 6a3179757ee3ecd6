using System.Globalization;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>How much was done: strokes of the knife, millimetres, or words; more than one may be said.</summary>
/// <param name="Strokes">Strokes in each quadrant that was worked, 1 to 99.</param>
/// <param name="Millimetres">Millimetres taken off or moved, above 0 and at most 20; thousandths are kept.</param>
/// <param name="Words">How much, in words.</param>
public readonly record struct Amount(int? Strokes = null, decimal? Millimetres = null, string? Words = null)
{
    /// <summary>The most strokes that one entry takes.</summary>
    public const int MostStrokes = 99;

    /// <summary>The most millimetres that one entry takes.</summary>
    public const decimal MostMillimetres = 20;

    /// <summary>The longest words for an amount, in UTF-16 characters.</summary>
    public const int LongestWords = 200;

    /// <summary>Nothing said about how much.</summary>
    public static Amount NotSaid => default;

    /// <summary>True when nothing was said about how much.</summary>
    public bool IsNotSaid => Strokes is null && Millimetres is null && PlainText.Tidy(Words) is null;

    /// <summary>Reads an amount as it was typed.</summary>
    /// <param name="strokes">A whole number, or empty.</param>
    /// <param name="millimetres">A number with a point or a comma, or empty.</param>
    /// <param name="words">Words, or empty.</param>
    /// <returns>The amount, or what is wrong with it.</returns>
    public static Outcome<Amount> Read(string? strokes, string? millimetres, string? words)
    {
        List<Problem> problems = [];
        int? count = null;
        decimal? length = null;
        if (PlainText.Tidy(strokes) is { } typedStrokes)
        {
            count = int.TryParse(typedStrokes, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;
            if (count is null)
            {
                problems.Add(new Problem(nameof(Strokes), "Type the strokes as a whole number, such as 3."));
            }
        }

        if (PlainText.Tidy(millimetres) is { } typedLength)
        {
            length = decimal.TryParse(
                typedLength.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm)
                ? mm : null;
            if (length is null)
            {
                problems.Add(new Problem(nameof(Millimetres), "Type the millimetres as a number, such as 0.2."));
            }
        }

        var amount = new Amount(count, length, PlainText.Tidy(words));
        problems.AddRange(amount.Check());
        return Checked.Give(problems, () => amount);
    }

    /// <summary>What is wrong with this amount.</summary>
    /// <returns>Nothing, or one problem for each part.</returns>
    public IEnumerable<Problem> Check()
    {
        List<Problem> problems = [.. PlainText.Check(nameof(Amount), Words, LongestWords)];
        if (Strokes is < 1 or > MostStrokes)
        {
            problems.Add(new Problem(nameof(Strokes), $"Strokes are 1 to {MostStrokes}."));
        }

        if (Millimetres is <= 0 or > MostMillimetres)
        {
            problems.Add(new Problem(nameof(Millimetres), $"Millimetres are above 0 and at most {MostMillimetres}."));
        }

        return problems;
    }

    /// <summary>The amount as a teacher would say it, such as "3 strokes" or "0.2 mm".</summary>
    /// <returns>The words; empty when nothing was said.</returns>
    public override string ToString()
    {
        List<string> parts = [];
        if (Strokes is { } strokes)
        {
            parts.Add(strokes == 1 ? "1 stroke" : string.Create(CultureInfo.InvariantCulture, $"{strokes} strokes"));
        }

        if (Millimetres is { } millimetres)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{millimetres:0.###} mm"));
        }

        if (PlainText.Tidy(Words) is { } words)
        {
            parts.Add(words);
        }

        return string.Join(", ", parts);
    }
}
