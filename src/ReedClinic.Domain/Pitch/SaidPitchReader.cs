using System.Globalization;
using System.Text.RegularExpressions;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Pitch;

/// <summary>Reads what <see cref="SaidPitch.Read"/> documents.</summary>
internal static class SaidPitchReader
{
    private const string Note =
        @"(?<letter{0}>[a-g])(?:[ -]?(?<accidental{0}>flat|sharp|natural|b|\#|♭|♯|♮))?[ ]?(?<octave{0}>[0-8])?(?![0-9a-z])";

    private const string Deviation =
        @"(?:(?<sign>[+\-±])[ ]?(?<size>[0-9]{1,3}(?:[.][0-9])?)[ ]?(?:c|ct|cts|cent|cents|¢)?"
        + @"|(?<size>[0-9]{1,3}(?:[.][0-9])?)[ ]?(?:c|ct|cts|cent|cents|¢)?[ ](?<way>flat|low|sharp|high))";

    private const string Bit = @"(?:an? (?:little|bit|touch|hair|shade)|a wee bit|slightly|somewhat|rather|quite|just)";

    private const string LeanAfter =
        @"(?:,?[ ]" + Bit + @"[ ](?:on the )?(?<lean>flat|low|sharp|high)(?:tish|ish)?(?: side)?"
        + @"|,?[ ](?<lean>flattish|lowish|sharpish|highish)|,?[ ]on the (?<lean>flat|low|sharp|high) side|,[ ]?(?<lean>flat|low|sharp|high))";

    // Nothing in these patterns repeats without end and what is typed is short, so none of them can run away. None has a time
    // limit: on a busy machine that would run out while nothing is wrong, in the middle of somebody's typing.
    private static readonly Regex One = Pattern("^(?:an? )?" + NoteOf("") + "(?:,?[ ]?" + Deviation + ")?$");

    private static readonly Regex Two = Pattern("^between (?:an? )?" + NoteOf("1") + " and (?:an? )?" + NoteOf("2") + "$");

    // “Flat C” leans, “C flat” is a note: the word stands before the note, or after it with a word such as “a bit”.
    private static readonly Regex LeanFirst =
        Pattern("^(?:an? )?(?:" + Bit + " )?(?<lean>flattish|flat|sharpish|sharp)[ ]" + NoteOf("") + "$");

    private static readonly Regex LeanLast = Pattern("^(?:an? )?" + NoteOf("") + LeanAfter + "$");

    internal static Outcome<SaidPitch> Read(string? text, Tuning tuning, string field)
    {
        var typed = (text ?? "").Trim();
        if (typed.Length == 0)
        {
            return Refuse(field, "Say which note you hear");
        }

        if (typed.Length > SaidPitch.LongestText)
        {
            return Refuse(field, "That is too long for a pitch");
        }

        var plain = Plain(typed);
        var one = One.Match(plain);
        if (one.Success)
        {
            return ReadOne(typed, one, tuning, field);
        }

        if (Leaning(plain) is { } leaning)
        {
            var (note, octave) = NoteOf(leaning, "");
            var lean = leaning.Groups["lean"].Value[0] is 'f' or 'l' ? PitchLean.Flat : PitchLean.Sharp;
            return new Outcome<SaidPitch>.Done(new SaidPitch(typed, note, Cents.Zero, octave, null, tuning.A4, lean));
        }

        var two = Two.Match(plain);
        return two.Success ? ReadTwo(typed, two, tuning, field) : Refuse(field, $"“{typed}” can't be read as a pitch");
    }

    private static Match? Leaning(string plain) =>
        LeanFirst.Match(plain) is { Success: true } first ? first : LeanLast.Match(plain) is { Success: true } last ? last : null;

    private static Outcome<SaidPitch> ReadOne(string typed, Match match, Tuning tuning, string field)
    {
        var cents = CentsOf(match);
        if (Math.Abs(cents) > 99)
        {
            return Refuse(field, "That is a semitone or more away: name the nearest note");
        }

        var (pitchClass, octave) = NoteOf(match, "");
        return new Outcome<SaidPitch>.Done(new SaidPitch(typed, pitchClass, new Cents(cents), octave, null, tuning.A4));
    }

    private static Outcome<SaidPitch> ReadTwo(string typed, Match match, Tuning tuning, string field)
    {
        var (first, firstOctave) = NoteOf(match, "1");
        var (second, secondOctave) = NoteOf(match, "2");
        var up = PitchClass.OfMidi(second.Value - first.Value + 12).Value;
        if (up is 0 or 6)
        {
            return Refuse(field, "“Between” needs two neighbouring notes");
        }

        var (low, high) = up < 6 ? (first, second) : (second, first);
        var lowOctave = up < 6 ? firstOctave : secondOctave;
        var highOctave = up < 6 ? secondOctave : firstOctave;
        var wrap = high.Value < low.Value ? 1 : 0;
        if (lowOctave is { } l && highOctave is { } h && h != l + wrap)
        {
            return Refuse(field, "Those two notes are more than half an octave apart");
        }

        var octave = lowOctave ?? highOctave - wrap;
        return new Outcome<SaidPitch>.Done(new SaidPitch(typed, low, Cents.Zero, octave, high, tuning.A4));
    }

    private static (PitchClass PitchClass, int? Octave) NoteOf(Match match, string which)
    {
        var natural = match.Groups["letter" + which].Value[0] switch
        {
            'c' => 0,
            'd' => 2,
            'e' => 4,
            'f' => 5,
            'g' => 7,
            'a' => 9,
            _ => 11,
        };
        var semitone = natural + match.Groups["accidental" + which].Value switch
        {
            "flat" or "b" or "♭" => -1,
            "sharp" or "#" or "♯" => 1,
            _ => 0,
        };
        var octave = match.Groups["octave" + which];
        return (
            PitchClass.OfMidi(semitone + 12),
            octave.Success ? octave.Value[0] - '0' + (int)Math.Floor(semitone / 12.0) : null);
    }

    private static double CentsOf(Match match)
    {
        if (!match.Groups["size"].Success)
        {
            return 0;
        }

        var size = double.Parse(match.Groups["size"].Value, CultureInfo.InvariantCulture);
        var down = match.Groups["sign"].Value == "-" || match.Groups["way"].Value is "flat" or "low";
        return down && size > 0 ? -size : size;
    }

    private static string Plain(string typed) => string.Join(
        ' ', typed.ToLowerInvariant().Replace('−', '-').Replace('–', '-').Replace('—', '-').Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string NoteOf(string which) => Note.Replace("{0}", which, StringComparison.Ordinal);

    private static Regex Pattern(string pattern) => new(pattern, RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture);

    private static Outcome<SaidPitch> Refuse(string field, string why) => new Outcome<SaidPitch>.Refused(
        [new Problem(field, why + ". For example: C, B♭ +10, C6 -15, Bb, flat C, between B and C.")]);
}
