using System.Globalization;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Bench.Story;

/// <summary>Distances in cents as somebody would say them, whole cents only.</summary>
public static class CentsWords
{
    private const int Lean = (int)SaidPitch.LeanCents;

    private static readonly string[] Numbers =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>Where a pitch stands: “70 cents below C”, “C”, “a little below C”, “50 to 100 cents above C”, “20 cents below to 30 above C”.</summary>
    /// <param name="range">How far it lies from the note.</param>
    /// <param name="note">The note’s name.</param>
    public static string Stand(CentsRange range, string note) => Of(range) switch
    {
        (0, 0) => note,
        (-Lean, 0) => "a little below " + note,
        (0, Lean) => "a little above " + note,
        var (low, high) when low < 0 && high > 0 => Say($"{Cents(-low)} below to {high} above {note}"),
        var (low, high) when high <= 0 => Say($"{Size(-high, -low)} below {note}"),
        var (low, high) => Say($"{Size(low, high)} above {note}"),
    };

    /// <summary>How far something moved: “18 cents up”, “no change”, “20 to 70 cents down”, “30 cents at most, up or down”.</summary>
    /// <param name="range">The change; plus is up.</param>
    public static string Change(CentsRange range) => Of(range) switch
    {
        (0, 0) => "no change",
        var (low, high) when low < 0 && high > 0 => $"{Cents(Math.Max(-low, high))} at most, up or down",
        var (low, high) when high <= 0 => Size(-high, -low) + " down",
        var (low, high) => Size(low, high) + " up",
    };

    /// <summary>The same as a clause: “the crow stood 18 cents higher”, “the crow had not moved”.</summary>
    /// <param name="range">The change; plus is up.</param>
    public static string Told(CentsRange range) => Of(range) switch
    {
        (0, 0) => "the crow had not moved",
        var (low, high) when low < 0 && high > 0 => $"the crow may have moved, but by {Cents(Math.Max(-low, high))} at most",
        var (low, high) when high <= 0 => $"the crow stood {Size(-high, -low)} lower",
        var (low, high) => $"the crow stood {Size(low, high)} higher",
    };

    /// <summary>A number of passes in words.</summary>
    /// <param name="passes">How many.</param>
    public static string Passes(int passes) => passes == 1 ? "one pass"
        : passes < Numbers.Length ? $"{Numbers[passes]} passes"
        : Say($"{passes} passes");

    private static (int Low, int High) Of(CentsRange range) => ((int)Math.Round(range.Low.Value), (int)Math.Round(range.High.Value));

    private static string Size(int near, int far) => near == far ? Cents(far)
        : near == 0 ? "up to " + Cents(far)
        : Say($"{near} to {Cents(far)}");

    private static string Cents(int size) => Say($"{size} {(size == 1 ? "cent" : "cents")}");

    private static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
