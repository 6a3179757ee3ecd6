using System.Globalization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>How the reed played under one test, as it is typed.</summary>
public sealed class TestForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.Test;

    /// <summary>Which test; the first one until another is chosen.</summary>
    public TestScale Scale => TestScale.Of(Typed.Maybe<TestKind>(nameof(TestKind)) is { } kind && Enum.IsDefined(kind) ? kind : TestScale.All[0].TestKind);

    /// <summary>The test that usually comes after this one; the same when it is the last.</summary>
    public TestKind Next => TestScale.All.SkipWhile(scale => scale != Scale).Skip(1).FirstOrDefault(Scale).TestKind;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning)
    {
        SaidPitch? pitch = null;
        if (Scale.TakesPitch && !string.IsNullOrWhiteSpace(Typed[nameof(Test.Pitch)]))
        {
            switch (SaidPitch.Read(Typed[nameof(Test.Pitch)], tuning, nameof(Test.Pitch)))
            {
                case Outcome<SaidPitch>.Done(var said):
                    pitch = said;
                    break;
                case Outcome<SaidPitch>.Refused(var problems):
                    return new Outcome<BenchEntry>.Refused(problems);
            }
        }

        int? step = int.TryParse(Typed[nameof(Test.Step)], NumberStyles.None, CultureInfo.InvariantCulture, out var index) ? index : null;
        return Any(Test.Of(Scale.TestKind, step, pitch, Text(nameof(Test.Words))));
    }

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var test = (Test)entry;
        Typed[nameof(TestKind)] = test.TestKind.ToString();
        Typed[nameof(Test.Step)] = test.Step?.ToString(CultureInfo.InvariantCulture) ?? "";
        Typed[nameof(Test.Pitch)] = test.Pitch?.Text ?? "";
        Typed[nameof(Test.Words)] = test.Words ?? "";
    }
}
