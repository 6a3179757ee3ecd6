using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench;

public sealed class EntryTests
{
    private static readonly FindingKindId Corners = new("tip-corners-thick");
    private static readonly Place Tip = new(Zone.TipCorners, Blades.Upper, Sides.Left);

    [Fact]
    public void A_test_needs_a_word_a_pitch_or_a_remark()
    {
        Assert.Equal("Step", Field(Domain.Bench.Test.Of(TestKind.Effort)));
        Assert.Equal("right", Writer.Value(Domain.Bench.Test.Of(TestKind.Effort, 2)).StepWord);
        Assert.Equal("odd", Writer.Value(Domain.Bench.Test.Of(TestKind.Effort, words: " odd ")).Words);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(5)]
    public void A_word_outside_the_scale_is_refused(int step) =>
        Assert.Equal("Step", Field(Domain.Bench.Test.Of(TestKind.Effort, step)));

    [Fact]
    public void Only_crow_peep_and_tuning_note_take_a_pitch_and_it_comes_back_as_it_was_said()
    {
        var pitch = Writer.Value(SaidPitch.Read("between B and C", Tuning.Standard));

        Assert.Equal(pitch, Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: pitch)).Pitch);
        Assert.Equal("Pitch", Field(Domain.Bench.Test.Of(TestKind.Edge, pitch: pitch)));
        Assert.Equal(
            [TestKind.Crow, TestKind.Peep, TestKind.TuningNote],
            TestScale.All.Where(scale => scale.TakesPitch).Select(scale => scale.TestKind));
    }

    [Fact]
    public void Every_test_has_one_scale_whose_good_word_is_on_it_and_in_the_middle_of_a_two_sided_one()
    {
        Assert.Equal(Enum.GetValues<TestKind>().Order(), TestScale.All.Select(scale => scale.TestKind).Order());
        Assert.Equal([TestKind.Length], TestScale.All.Where(scale => scale.TakesMillimetres).Select(scale => scale.TestKind));
        Assert.Empty(TestScale.Of(TestKind.Length).Steps);
        Assert.All(TestScale.All.Where(scale => !scale.TakesMillimetres), scale =>
        {
            Assert.InRange(scale.Good, 0, scale.Steps.Count - 1);
            Assert.Equal(scale.Steps.Count, scale.Steps.Distinct().Count());
            Assert.Equal(0, scale.FromGood(scale.Good));
            if (scale.Shape == ScaleShape.TwoSided)
            {
                Assert.Equal(scale.Steps.Count / 2, scale.Good);
            }
            else if (scale.Shape == ScaleShape.OneSided)
            {
                Assert.Equal(scale.Steps.Count - 1, scale.Good);
            }
        });
    }

    [Theory]
    [InlineData("70.5")]
    [InlineData("66")]
    [InlineData("40.0")]
    public void A_length_is_a_number_of_whole_tenths_and_comes_back_as_it_was_measured(string millimetres)
    {
        var length = decimal.Parse(millimetres, System.Globalization.CultureInfo.InvariantCulture);

        Assert.Equal(length, Writer.Value(Domain.Bench.Test.Of(TestKind.Length, millimetres: length)).Millimetres);
    }

    [Fact]
    public void A_length_needs_its_number_and_nothing_else_has_one()
    {
        Assert.Equal("Millimetres", Field(Domain.Bench.Test.Of(TestKind.Length, words: "long")));
        Assert.Equal("Millimetres", Field(Domain.Bench.Test.Of(TestKind.Length, millimetres: 70.55m)));
        Assert.Equal("Millimetres", Field(Domain.Bench.Test.Of(TestKind.Length, millimetres: 7.05m)));
        Assert.Equal("Millimetres", Field(Domain.Bench.Test.Of(TestKind.Length, millimetres: 705m)));
        Assert.Equal("Step", Field(Domain.Bench.Test.Of(TestKind.Length, 0, millimetres: 70m)));
        Assert.Equal("Millimetres", Field(Domain.Bench.Test.Of(TestKind.Crow, 0, millimetres: 70m)));
    }

    // The lengths are published ones: 70 mm, oboeinsight.com, 12 September 2008; 72 and 65 mm, woodwind.org forum, message 3724;
    // 67.5 mm, woodwind.org forum, message 7822; cor anglais 55 and 60 mm, musicalinstrumenthub.com, archive 21499.
    [Theory]
    [InlineData(Instrument.Oboe, 70.0, true)]
    [InlineData(Instrument.Oboe, 72.0, true)]
    [InlineData(Instrument.Oboe, 67.5, true)]
    [InlineData(Instrument.Oboe, 65.0, true)]
    [InlineData(Instrument.Oboe, 55.0, false)]
    [InlineData(Instrument.CorAnglais, 55.0, true)]
    [InlineData(Instrument.CorAnglais, 60.0, true)]
    [InlineData(Instrument.CorAnglais, 70.0, false)]
    [InlineData(null, 55.0, true)]
    public void A_length_that_no_reed_of_this_instrument_has_is_refused(Instrument? instrument, double millimetres, bool taken)
    {
        var length = Writer.Value(Domain.Bench.Test.Of(TestKind.Length, millimetres: (decimal)millimetres));

        Assert.Equal(taken, ReedLengths.Check(instrument, length) is null);
    }

    [Fact]
    public void Advice_is_set_aside_by_its_own_name_with_or_without_a_reason()
    {
        var id = new AdviceId("clip-when-sharp/0a1b");

        Assert.Equal((id, null), (Writer.Value(AdviceSetAside.Of(id, " ")).AdviceId, Writer.Value(AdviceSetAside.Of(id)).Words));
        Assert.Equal("I know it", Writer.Value(AdviceSetAside.Of(id, " I know it ")).Words);
        Assert.Equal("AdviceId", Field(AdviceSetAside.Of(default)));
        Assert.Equal("AdviceId", Field(AdviceSetAside.Of(new AdviceId("Clip When Sharp"))));
        Assert.Equal("AdviceId", Field(AdviceSetAside.Of(new AdviceId("clip\n"))));
        Assert.Equal("AdviceId", Field(AdviceSetAside.Of(new AdviceId(new string('a', AdviceId.Longest + 1)))));
        Assert.Equal("Words", Field(AdviceSetAside.Of(id, "bell\a")));
    }

    [Fact]
    public void Kinds_are_good_or_not_and_never_more_or_less_so()
    {
        var crow = TestScale.Of(TestKind.Crow);

        Assert.Equal([0, 1, 1, 1], crow.Steps.Select((_, step) => crow.FromGood(step)));
    }

    [Fact]
    public void A_comparison_needs_a_relation_and_another_place_and_nothing_else_has_one()
    {
        var other = new Place(Zone.TipCentre);

        Assert.Equal(other, Writer.Value(Find(FindingShape.Comparison, Relation.ThickerThan, other)).OtherPlace);
        Assert.Equal("Relation", Field(Find(FindingShape.Comparison, null, other)));
        Assert.Equal("OtherPlace", Field(Find(FindingShape.Comparison, Relation.ThickerThan, null)));
        Assert.Equal("OtherPlace", Field(Find(FindingShape.Comparison, Relation.ThickerThan, Tip)));
        Assert.Equal("Shape", Field(Find(FindingShape.Spot, Relation.ThickerThan, null)));
        Assert.Equal("Shape", Field(Find(FindingShape.ShapeAcross, null, other)));
        Assert.Null(Writer.Value(Find(FindingShape.SeparationAlong, null, null)).OtherPlace);
    }

    [Fact]
    public void A_finding_outside_the_catalogue_needs_words()
    {
        Assert.Equal("FindingKind", Field(Finding.Of(new FindingKindId("no-such-thing"), FindingCharacter.Fault, Tip)));
        Assert.Equal("FindingKind", Field(Finding.Of(default, FindingCharacter.Fault, Tip)));
        Assert.Equal("Words", Field(Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Taste, Tip, words: " ")));
        Assert.Equal("a dark fleck", Writer.Value(
            Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Taste, Tip, words: "a dark fleck")).Words);
    }

    [Fact]
    public void Values_that_no_form_offers_are_refused_beside_their_field()
    {
        Assert.Equal("Character", Field(Finding.Of(Corners, (FindingCharacter)9, Tip)));
        Assert.Equal("Place", Field(Finding.Of(Corners, FindingCharacter.Fault, new Place((Zone)99))));
        Assert.Equal("KnownBy", Field(Finding.Of(Corners, FindingCharacter.Fault, Tip, knownBy: (KnownBy)64)));
        Assert.Equal("Ending", Field(FindingEnded.Of(default, (FindingEnding)9)));
        Assert.Equal("Outcome", Field(RiskClosed.Of(default, (RiskOutcome)9)));
        Assert.Equal("VerdictKind", Field(Verdict.Of((VerdictKind)99)));
        Assert.Equal("TestKind", Field(Domain.Bench.Test.Of((TestKind)99, 0)));
        Assert.Equal("ForTheSakeOf", Field(Adjustment.Of(new AdjustmentKindId("clip"), Tip, forTheSakeOf: (Zone)99)));
        Assert.Equal("AdjustmentKind", Field(Adjustment.Of(new AdjustmentKindId("polish-the-keys"), Tip)));
        Assert.Equal("Words", Field(Adjustment.Of(AdjustmentKindId.SomethingElse, Tip)));
    }

    [Fact]
    public void What_has_to_be_said_in_words_is_refused_when_empty_too_long_or_not_printable()
    {
        Assert.Equal("Words", Field(Note.Of("  ")));
        Assert.Equal("Words", Field(Note.Of(new string('a', PlainText.LongestRemark + 1))));
        Assert.Equal("Words", Field(Note.Of("bell\a")));
        Assert.Equal("Words", Field(LeaveAlone.Of(Tip, null)));
        Assert.Equal("Words", Field(Risk.Of("")));
        Assert.Equal("two\nlines", Writer.Value(Note.Of("two\nlines ")).Words);
    }

    [Theory]
    [InlineData("3", "", "", "3 strokes")]
    [InlineData("1", "", "", "1 stroke")]
    [InlineData("", "0.2", "", "0.2 mm")]
    [InlineData("", "0,25", "", "0.25 mm")]
    [InlineData("2", ".005", "at the left corner", "2 strokes, 0.005 mm, at the left corner")]
    [InlineData("", "", "", "")]
    public void An_amount_is_read_as_it_is_typed(string strokes, string millimetres, string words, string said) =>
        Assert.Equal(said, Writer.Value(Amount.Read(strokes, millimetres, words)).ToString());

    [Theory]
    [InlineData("two", "", "Strokes")]
    [InlineData("0", "", "Strokes")]
    [InlineData("-1", "", "Strokes")]
    [InlineData("100", "", "Strokes")]
    [InlineData("", "-0.2", "Millimetres")]
    [InlineData("", "0", "Millimetres")]
    [InlineData("", "21", "Millimetres")]
    [InlineData("", "1e3", "Millimetres")]
    public void An_amount_that_makes_no_sense_is_refused_beside_its_field(string strokes, string millimetres, string field) =>
        Assert.Equal(field, Field(Amount.Read(strokes, millimetres, null)));

    [Fact]
    public void An_adjustment_keeps_amount_finding_and_the_zone_for_whose_sake_it_was_done()
    {
        var finding = new EntryId(Writer.Number(10, 1));
        var work = Writer.Value(Adjustment.Of(
            new AdjustmentKindId("thin-tip-sides"), Tip, new Amount(2, 0.005m, "hardly"), finding, Zone.HeartCentre));

        Assert.Equal(new Amount(2, 0.005m, "hardly"), work.Amount);
        Assert.Equal((finding, Zone.HeartCentre), (work.ForFindingId, work.ForTheSakeOf));
        Assert.True(Writer.Work().Amount is { Strokes: 2, Millimetres: null });
    }

    [Fact]
    public void A_reed_is_put_aside_until_something_is_said_about_it()
    {
        var writer = new Writer();
        Assert.False(writer.Log.IsParked);
        writer.Say(Writer.Test(TestKind.Crow, 0));
        var parked = writer.Say(Writer.Value(Parked.Of("till tomorrow")));
        Assert.True(writer.Log.IsParked);

        writer.Say(Writer.Value(AdviceSetAside.Of(new AdviceId("untested/0"))));
        Assert.True(writer.Log.IsParked);

        var note = writer.Say(Writer.Note("dry by now"));
        Assert.False(writer.Log.IsParked);

        writer.Undo(note);
        Assert.True(writer.Log.IsParked);

        writer.Undo(parked);
        Assert.False(writer.Log.IsParked);
    }

    [Fact]
    public void A_reed_that_was_taken_up_can_be_put_aside_again_and_a_correction_takes_it_up_too()
    {
        var writer = new Writer();
        writer.Say(Writer.Value(Parked.Of()));
        var note = writer.Say(Writer.Note("dry"));
        writer.Say(Writer.Value(Parked.Of()));
        Assert.True(writer.Log.IsParked);

        writer.Say(Writer.Note("dry now"), note);
        Assert.False(writer.Log.IsParked);
    }

    [Fact]
    public void Stamping_makes_a_copy_and_leaves_the_entry_as_it_was()
    {
        var note = Writer.Note("one");
        var stamped = note.StampedWith(new EntryStamp(new EntryId(Writer.Number(10, 1)), Writer.Reed, 7, default, default, Writer.Ada));

        Assert.Equal((0, 7), (note.Sequence, stamped.Sequence));
        Assert.Equal("one", Assert.IsType<Note>(stamped).Words);
    }

    [Fact]
    public void Every_value_that_a_log_can_hold_has_a_name()
    {
        string[] names =
        [
            .. Enum.GetValues<VerdictKind>().Select(value => value.Name()),
            .. Enum.GetValues<FindingCharacter>().Select(value => value.Name()),
            .. Enum.GetValues<FindingShape>().Select(value => value.Name()),
            .. Enum.GetValues<Relation>().Select(value => value.Name()),
            .. Enum.GetValues<Certainty>().Select(value => value.Name()),
            .. Enum.GetValues<Arose>().Select(value => value.Name()),
            .. Enum.GetValues<FindingEnding>().Select(value => value.Name()),
            .. Enum.GetValues<RiskOutcome>().Select(value => value.Name()),
            .. Enum.GetValues<EntryKind>().Select(value => value.Name()),
        ];

        Assert.All(names, name => Assert.Equal(name.Trim().ToLowerInvariant(), name));
        Assert.Equal("by light, finger and ear", (KnownBy.Light | KnownBy.Finger | KnownBy.Ear).Name());
        Assert.Equal("by lip", KnownBy.Lip.Name());
        Assert.Equal("", KnownBy.NotSaid.Name());
        Assert.Throws<ArgumentOutOfRangeException>(() => ((VerdictKind)99).Name());
    }

    private static Outcome<Finding> Find(FindingShape shape, Relation? relation, Place? other) =>
        Finding.Of(Corners, FindingCharacter.Fault, Tip, shape, relation, other);

    private static string Field<T>(Outcome<T> outcome) =>
        Assert.Single(Assert.IsType<Outcome<T>.Refused>(outcome).Problems).Field;
}
