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
        decimal? length = null;
        if (Scale.TakesMillimetres && Text(nameof(Test.Millimetres)) is { } typed)
        {
            if (!decimal.TryParse(typed.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm))
            {
                return new Outcome<BenchEntry>.Refused([new Problem(nameof(Test.Millimetres), "Type the length as a number, such as 70.5.")]);
            }

            length = mm;
        }

        // What was chosen for another test stays typed; a measured one has no words to choose.
        return Any(Test.Of(Scale.TestKind, Scale.TakesMillimetres ? null : step, pitch, Text(nameof(Test.Words)), length));
    }

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var test = (Test)entry;
        Typed[nameof(TestKind)] = test.TestKind.ToString();
        Typed[nameof(Test.Step)] = test.Step?.ToString(CultureInfo.InvariantCulture) ?? "";
        Typed[nameof(Test.Pitch)] = test.Pitch?.Text ?? "";
        Typed[nameof(Test.Millimetres)] = test.Millimetres?.ToString("0.0", CultureInfo.InvariantCulture) ?? "";
        Typed[nameof(Test.Words)] = test.Words ?? "";
    }
}
