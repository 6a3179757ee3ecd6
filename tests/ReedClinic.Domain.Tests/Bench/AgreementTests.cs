using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench;

public sealed class AgreementTests
{
    [Theory]
    [InlineData(Permission.AdviseOnly, "soak", false)]
    [InlineData(Permission.AdviseOnly, "clean-inside", true)]
    [InlineData(Permission.AdviseOnly, "clip-hair", true)]
    [InlineData(Permission.AdviseOnly, "something-else", true)]
    [InlineData(Permission.SafeChangesOnly, "soak", false)]
    [InlineData(Permission.SafeChangesOnly, "close-press", false)]
    [InlineData(Permission.SafeChangesOnly, "clip-hair", false)]
    [InlineData(Permission.SafeChangesOnly, "thin-corners", false)]
    [InlineData(Permission.SafeChangesOnly, "clip", true)]
    [InlineData(Permission.SafeChangesOnly, "something-else", true)]
    [InlineData(Permission.SafeChangesOnly, "dust-heart", true)]
    [InlineData(Permission.SafeChangesOnly, "retie", true)]
    [InlineData(Permission.TakeRisks, "clip", false)]
    public void It_is_asked_for_what_goes_further_than_the_student_did(Permission permission, string kind, bool asked) =>
        Assert.Equal(asked, Agreement.IsAsked(permission, new AdjustmentKindId(kind), Amount.NotSaid, null));

    [Theory]
    [InlineData(6, null, false)]
    [InlineData(7, null, true)]
    [InlineData(null, 0.2, false)]
    [InlineData(null, 0.25, true)]
    public void Where_safe_changes_only_were_asked_for_a_small_step_is_a_small_amount(int? strokes, double? millimetres, bool asked) =>
        Assert.Equal(asked, Agreement.IsAsked(Permission.SafeChangesOnly, new AdjustmentKindId("thin-corners"), new Amount(strokes, (decimal?)millimetres), null));

    [Theory]
    [InlineData(null, null, "Agreed with the student since.")]
    [InlineData("  ", null, "Agreed with the student since.")]
    [InlineData("by a hair ", "by a hair.", "by a hair. Agreed with the student since.")]
    [InlineData("done!", "done!", "done! Agreed with the student since.")]
    public void It_is_written_after_the_remark_once_and_comes_out_again(string? words, string? remark, string written)
    {
        Assert.Equal(written, Agreement.With(words));
        Assert.Equal(written, Agreement.With(Agreement.With(words)));
        Assert.Equal(remark, Agreement.Without(written));
    }

    [Fact]
    public void That_it_was_not_agreed_is_written_and_comes_out_in_the_same_way_and_claims_nothing()
    {
        var written = Agreement.With("by a hair", agreed: false);

        Assert.Equal("by a hair. Done without being agreed.", written);
        Assert.Equal(("by a hair.", false, true), (Agreement.Without(written), Agreement.IsIn(written), Agreement.IsSaid(written)));
        Assert.Equal("by a hair. Agreed with the student since.", Agreement.With(written));
        Assert.Equal(written, Agreement.With(Agreement.With(written), agreed: false));
        Assert.Equal(["true", "not", ""], new[] { Agreement.With(null), written, "by a hair" }.Select(Agreement.FieldOf));
        Assert.Null(Agreement.Wanted(Reed.Announced(new ReedId(Guid.Empty), new BatchId(Guid.Empty), 1, new AnnouncedReed("green", "dull", Permission.AdviseOnly)), Clip(written), null));
    }

    [Fact]
    public void An_adjustment_in_which_it_stands_is_not_asked_about_again_and_a_note_never_is()
    {
        var reed = Reed.Announced(new ReedId(Guid.Empty), new BatchId(Guid.Empty), 1, new AnnouncedReed("green", "dull", Permission.AdviseOnly));

        Assert.Equal("Agreed", Agreement.Wanted(reed, Clip(null), null)!.Value.Field);
        Assert.Contains("advice only", Agreement.Wanted(reed, Clip(null), null)!.Value.Message, StringComparison.Ordinal);
        Assert.Null(Agreement.Wanted(reed, Clip(Agreement.With(null)), null));
        Assert.Null(Agreement.Wanted(reed, Assert.IsType<Outcome<Note>.Done>(Note.Of("clipped?")).Value, null));
    }

    [Theory]
    [InlineData("clip-hair", "C", false)]
    [InlineData("clip-hair", "C +30", false)]
    [InlineData("clip-hair", "C +31", true)]
    [InlineData("clip-hair", "C# +5", true)]
    [InlineData("clip-hair", "B", false)]
    [InlineData("clip-hair", "between C and C#", true)]
    [InlineData("thin-corners", "C# +5", false)]
    public void The_least_clip_is_no_safe_change_while_the_crow_is_sharp(string kind, string crow, bool asked)
    {
        var heard = Assert.IsType<Outcome<SaidPitch>.Done>(SaidPitch.Read(crow, Tuning.Standard)).Value.Against(CrowTarget.OnC(Tuning.Standard));
        var reed = Reed.Announced(new ReedId(Guid.Empty), new BatchId(Guid.Empty), 1, new AnnouncedReed("green", "dull", Permission.SafeChangesOnly));
        var work = Assert.IsType<Outcome<Adjustment>.Done>(Adjustment.Of(new AdjustmentKindId(kind), new Place(Zone.TipEdge))).Value;

        var wanted = Agreement.Wanted(reed, work, heard);

        Assert.Equal(asked, wanted is not null);
        Assert.True(wanted is null || wanted.Value.Message.Contains("the crow is sharp already: a clip takes it higher", StringComparison.Ordinal));
    }

    private static Adjustment Clip(string? words) => Assert.IsType<Outcome<Adjustment>.Done>(
        Adjustment.Of(new AdjustmentKindId("clip-hair"), new Place(Zone.TipEdge), words: words)).Value;
}
