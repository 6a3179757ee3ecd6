using System.Globalization;
using Microsoft.Extensions.Localization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Web.Features.Bench;

/// <summary>A said pitch against what the student tunes to, in words.</summary>
public sealed class PitchLine(IStringLocalizer<BenchText> t)
{
    private static readonly PitchClass TuningNote = new(9);

    /// <summary>The pitch as it was said, and how far it lies from what this test is compared with.</summary>
    /// <param name="test">The test.</param>
    /// <param name="pitch">The pitch.</param>
    /// <param name="tuning">What the student tunes to.</param>
    public string Say(TestKind test, SaidPitch pitch, Tuning tuning)
    {
        var target = TargetOf(test, tuning);
        var a4 = tuning.A4.Value.ToString("0.#", CultureInfo.InvariantCulture);
        return target is { } aim
            ? t["PitchAgainst", pitch.Show(), Distance(pitch.Against(aim), aim.PitchClass.Name), a4]
            : t["PitchAlone", pitch.Show(), a4];
    }

    /// <summary>The pitch as the log tells it: where it lies, and what was said only where that isn't the same thing.</summary>
    /// <param name="test">The test.</param>
    /// <param name="pitch">The pitch.</param>
    /// <param name="tuning">What the student tunes to.</param>
    public string Tell(TestKind test, SaidPitch pitch, Tuning tuning)
    {
        var told = TargetOf(test, tuning) is not { } aim ? pitch.Show()
            : pitch.Against(aim) is { IsOnePitch: true } range && pitch.PitchClass == aim.PitchClass ? Distance(range, aim.PitchClass.Name)
            : $"{pitch.Show()}: {Distance(pitch.Against(aim), aim.PitchClass.Name)}";
        return tuning.A4.Value == 440 ? told : t["PitchAlone", told, tuning.A4.Value.ToString("0.#", CultureInfo.InvariantCulture)];
    }

    /// <summary>What a test's pitch is compared with; a peep has no one note that it ought to be (teachers differ).</summary>
    /// <param name="test">The test.</param>
    /// <param name="tuning">What the student tunes to.</param>
    public static CrowTarget? TargetOf(TestKind test, Tuning tuning) => test switch
    {
        TestKind.Crow => CrowTarget.OnC(tuning),
        TestKind.TuningNote => new CrowTarget(TuningNote, tuning),
        _ => null,
    };

    private string Distance(CentsRange range, string note)
    {
        if (!range.IsOnePitch)
        {
            return t["CentsRange", Signed(range.Low), Signed(range.High), note];
        }

        var cents = Math.Round(range.Low.Value);
        return cents == 0 ? t["CentsOn", note] : t[cents switch { -1 => "CentBelow", < 0 => "CentsBelow", 1 => "CentAbove", _ => "CentsAbove" }, Math.Abs(cents), note];
    }

    private static string Signed(Cents cents) => Math.Round(cents.Value).ToString("+0;−0;0", CultureInfo.InvariantCulture);
}
