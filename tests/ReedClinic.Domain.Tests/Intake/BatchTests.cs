using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Intake;

public sealed class BatchTests
{
    private static readonly DateTimeOffset Monday = new(2025, 3, 3, 10, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_new_batch_numbers_its_reeds_and_questions()
    {
        var batch = Announced(3);

        Assert.Equal([1, 2, 3], batch.Reeds.Select(reed => reed.Number));
        Assert.Equal(Stage.OnItsWay, batch.Stage);
        Assert.Equal(["about reed 1", "about reed 2", "about reed 3", "about all"], batch.Questions.Select(question => question.Text));
        Assert.Equal(batch.Reeds[1].Id, batch.Questions[1].Reed);
        Assert.Null(batch.Questions[3].Reed);
        Assert.Equal(440, batch.CrowTarget.Tuning.A4.Value);
    }

    [Fact]
    public void Opening_the_parcel_keeps_every_difference_for_the_letter()
    {
        var batch = Announced(4);
        Record(batch, 1, new ReedArrival(Presence.Here, Fitness: Fitness.Fit));
        Record(batch, 2, new ReedArrival(Presence.Missing));
        Record(batch, 3, new ReedArrival(Presence.Here, Damage: "left corner chipped", Fitness: Fitness.DryFirst));
        Record(batch, 4, new ReedArrival(Presence.Here, Fitness: Fitness.Mould));
        var extra = Assert.IsType<Outcome<Reed>.Done>(batch.AddExtra(new ReedId(NewId()), "no tag, blue thread", Monday)).Value;

        Assert.Equal(Stage.Here, batch.Stage);
        Assert.Equal(
            [
                (MismatchKind.Missing, 2), (MismatchKind.Damaged, 3), (MismatchKind.Damp, 3),
                (MismatchKind.Mouldy, 4), (MismatchKind.Extra, 5),
            ],
            batch.Mismatches.Select(mismatch => (mismatch.Kind, mismatch.Number)));
        Assert.Equal(Permission.AdviseOnly, extra.Permission);
        Assert.False(extra.MayBePlayed);
        Assert.Equal(1, Assert.Single(batch.Reeds, reed => reed.MayBePlayed).Number);
    }

    [Fact]
    public void A_field_that_was_left_empty_is_no_damage()
    {
        var batch = Announced(1);
        Record(batch, 1, new ReedArrival(Presence.Here, UpperMark: " ", Damage: "", Fitness: Fitness.Fit));

        Assert.Empty(batch.Mismatches);
        Assert.Equal(new ReedArrival(Presence.Here, Fitness: Fitness.Fit), batch.Reeds[0].Arrival);
    }

    [Fact]
    public void A_missing_reed_has_nothing_else_to_tell()
    {
        var batch = Announced(1);
        Record(batch, 1, new ReedArrival(Presence.Here, "dot", WindingHand.Right, Overlap.UpperToTheLeft, true, "chip", Fitness.Fit));
        Record(batch, 1, new ReedArrival(Presence.Missing, "dot", WindingHand.Right, Overlap.UpperToTheLeft, true, "chip", Fitness.Fit));

        Assert.Equal(new ReedArrival(Presence.Missing), batch.Reeds[0].Arrival);
    }

    [Theory]
    [InlineData(WindingHand.NotRead, Overlap.UpperToTheLeft, true)]
    [InlineData(WindingHand.Right, Overlap.NotRead, false)]
    [InlineData(WindingHand.Left, Overlap.None, false)]
    public void Agreement_needs_both_the_winding_and_the_overlap(WindingHand winding, Overlap overlap, bool agrees)
    {
        var problems = new ReedArrival(Presence.Here, null, winding, overlap, agrees, null, Fitness.Fit).Check("Reeds[0].");

        Assert.Equal("Reeds[0].OverlapAgrees", Assert.Single(problems).Field);
        Assert.Empty(new ReedArrival(Presence.Here, null, winding, overlap, null, null, Fitness.Fit).Check());
    }

    [Fact]
    public void Neither_way_of_overlapping_is_wrong_by_itself() =>
        Assert.All(
            from winding in Enum.GetValues<WindingHand>().Where(hand => hand != WindingHand.NotRead)
            from overlap in Enum.GetValues<Overlap>().Where(way => way is Overlap.UpperToTheLeft or Overlap.UpperToTheRight)
            from agrees in Enumerable.Range(0, 2)
            select new ReedArrival(Presence.Here, null, winding, overlap, agrees == 1, null, Fitness.Fit),
            seen => Assert.Empty(seen.Check()));

    [Fact]
    public void A_reed_that_is_here_must_be_called_fit_or_not()
    {
        var batch = Announced(1);

        var problem = Assert.Single(batch.RecordArrival(batch.Reeds[0].Id, new ReedArrival(Presence.Here), Monday, "Reeds[0]."));

        Assert.Equal("Reeds[0].Fitness", problem.Field);
        Assert.Equal(Presence.Expected, batch.Reeds[0].Presence);
        Assert.Equal(Stage.OnItsWay, batch.Stage);
    }

    [Fact]
    public void An_announced_reed_cannot_turn_into_an_extra_one_nor_back()
    {
        var batch = Announced(1);
        batch.AddExtra(new ReedId(NewId()), "blue", Monday);

        Assert.NotEmpty(batch.RecordArrival(batch.Reeds[0].Id, new ReedArrival(Presence.Extra, Fitness: Fitness.Fit), Monday));
        Assert.NotEmpty(batch.RecordArrival(batch.Reeds[1].Id, new ReedArrival(Presence.Here, Fitness: Fitness.Fit), Monday));
        Assert.Empty(batch.RecordArrival(batch.Reeds[1].Id, new ReedArrival(Presence.Extra, Fitness: Fitness.Fit), Monday));
    }

    [Fact]
    public void A_stage_keeps_its_first_day_and_a_batch_never_goes_back()
    {
        var batch = Announced(1);

        Assert.True(batch.Reach(Stage.Here, Monday.AddDays(3)));
        Assert.False(batch.Reach(Stage.Here, Monday.AddDays(9)));
        Assert.True(batch.Reach(Stage.AtTheBench, Monday.AddDays(4)));
        Assert.False(batch.Reach(Stage.Here, Monday.AddDays(10)));

        Assert.Equal(
            [(Stage.OnItsWay, Monday), (Stage.Here, Monday.AddDays(3)), (Stage.AtTheBench, Monday.AddDays(4))], batch.Journey);
    }

    [Fact]
    public void An_extra_reed_needs_words_to_be_recognised_by() =>
        Assert.IsType<Outcome<Reed>.Refused>(Announced(1).AddExtra(new ReedId(NewId()), "  ", Monday));

    [Fact]
    public void Extra_reeds_end_somewhere()
    {
        var batch = Announced(12);
        for (var i = 12; i < Batch.MostReedsWithExtras; i++)
        {
            Assert.IsType<Outcome<Reed>.Done>(batch.AddExtra(new ReedId(NewId()), "one more", Monday));
        }

        Assert.IsType<Outcome<Reed>.Refused>(batch.AddExtra(new ReedId(NewId()), "one more", Monday));
    }

    [Fact]
    public void Mould_says_what_follows() =>
        Assert.All(FitnessWords.All, words => Assert.Equal(words, FitnessWords.Of(words.Fitness)));

    [Fact]
    public void Reeds_that_were_not_posted_after_all_are_where_they_were_and_what_is_home_stays_there()
    {
        var batch = Announced(1);
        Assert.False(batch.TakePostingBack());
        batch.Reach(Stage.LetterSent, Monday);
        batch.Reach(Stage.OnItsWayHome, Monday);

        Assert.True(batch.TakePostingBack());

        Assert.Equal((Stage.LetterSent, null), (batch.Stage, batch.PostedBackAt));
        batch.Reach(Stage.OnItsWayHome, Monday.AddDays(1));
        Assert.Equal(Monday.AddDays(1), batch.PostedBackAt);
        batch.Reach(Stage.Home, Monday.AddDays(2));
        Assert.False(batch.TakePostingBack());
    }

    private static void Record(Batch batch, int number, ReedArrival seen) =>
        Assert.Empty(batch.RecordArrival(batch.Reeds[number - 1].Id, seen, Monday));

    private static Batch Announced(int reeds)
    {
        var form = IntakeReaderTests.Form(reeds);
        form.Questions = "about all";
        for (var i = 0; i < reeds; i++)
        {
            form.Reeds[i].Questions = FormattableString.Invariant($"about reed {i + 1}");
        }

        var said = Assert.IsType<Outcome<AnnouncedBatch>.Done>(IntakeReader.Read(form)).Value;
        return Batch.Announce(
            new BatchId(NewId()), BatchCode.FromNumber(7), new StudentId(NewId()), new OperationId(NewId()), said, NewId, Monday);
    }

    private static Guid NewId() => Guid.CreateVersion7(Monday);
}
