using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What a letter says of passes, reeds and places is true of each of them, and said once.</summary>
public sealed class LetterEachPassTests
{
    private static readonly IEnumerable<int> Seeds = Enumerable.Range(1, 25);

    [Fact]
    public void What_was_done_in_one_pass_of_three_is_not_told_of_all_three() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        Pass(scene, "define-tip", Zone.HeartCentre);
        Pass(scene, "blend");
        Pass(scene, "clip-hair");

        var story = Story(scene);

        Assert.DoesNotMatch(@"three passes[^.]*\bI (set the tip|made the step)", story);
        Assert.Matches("three passes[^.]*(test|tried|trying)", story);
    });

    [Fact]
    public void What_was_done_in_each_pass_is_told_in_one_sentence_with_their_number() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        Pass(scene, "thin-corners");
        Pass(scene, "blend");

        Assert.Matches(@"two passes[^.]*\bI [^.]*corners[^.]* and [^.]*(slope|heart)|worked on it in two passes[^.]*: I [^.]*corners|went over it in two passes[^.]*: I [^.]*corners", Story(scene));
    });

    [Fact]
    public void What_the_words_at_the_bench_speak_of_is_not_called_untried() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, "A little flat by the end of a rehearsal.");
        scene.Log(1, Test.Of(TestKind.Crow, 0, LetterPitch("B +30")));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.Crow, 0, LetterPitch("C")));
        scene.Log(1, Stopped.Of("The pitch is up where you need it."));

        Assert.DoesNotMatch("(?i)no test of (just|exactly)|did not test", Story(scene));
    });

    [Fact]
    public void For_whose_sake_it_was_done_is_told_of_one_reed_only()
    {
        var scene = new LetterScene(3) { Thread = LetterThread.Nothing };
        for (var number = 1; number <= 3; number++)
        {
            scene.Arrive(number);
            scene.Log(number, Adjustment.Of(new("define-tip"), new Place(Zone.Transition), forTheSakeOf: Zone.HeartCentre));
            scene.Log(number, Test.Of(TestKind.Crow, 0));
        }

        Assert.Single(Regex.Matches(string.Join('\n', LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text)), "stronger"));
    }

    [Theory]
    [InlineData("Because the tip was thin enough", "The tip was thin enough.")]
    [InlineData("The cane is soft; more work would only thin it", "The cane is soft; more work would only thin it.")]
    [InlineData("good for long notes at home", "It is good for long notes at home.")]
    [InlineData("Now i think it likes a day of rest", "Now I think it likes a day of rest.")]
    public void Words_of_the_bench_come_whole_where_they_can(string typed, string said)
    {
        var scene = Scene(1);
        Pass(scene, "thin-corners");
        scene.Log(1, Verdict.Of(VerdictKind.Improved, typed));

        var story = Story(scene);

        Assert.EndsWith(said, story, StringComparison.Ordinal);
        Assert.DoesNotContain("Because", story, StringComparison.Ordinal);
    }

    [Fact]
    public void My_words_at_the_bench_are_named_so_once_in_a_letter() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        Pass(scene, "thin-corners");
        scene.Log(1, Stopped.Of("lamp, then plaque, then lamp"));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, "long notes, no more"));

        Assert.Single(Regex.Matches(Story(scene), "(?i)at the bench"));
    });

    [Fact]
    public void What_is_suspected_on_one_reed_is_not_found_in_all() => Assert.All(Seeds, seed =>
    {
        var scene = new LetterScene(3, Batch(seed)) { Thread = new(new FindingKindId("tip-corners-thick"), null, "In all three reeds.") };
        for (var number = 1; number <= 3; number++)
        {
            scene.Arrive(number);
            scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), certainty: number == 3 ? Certainty.Suspected : Certainty.Certain));
            scene.Log(number, Test.Of(TestKind.Crow, 1));
        }

        var lesson = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Kind == BlockKind.Lesson).Text;

        Assert.DoesNotContain("all three", lesson, StringComparison.Ordinal);
        Assert.Matches("(?i)reeds one and two", lesson);
        Assert.Matches("(?i)reed three", lesson);
    });

    [Fact]
    public void Each_plan_of_scraping_says_how_many_rounds_and_by_what_one_hears_that_it_is_enough_and_takes_out_no_plaque_that_it_has_not_put_in()
    {
        string[] kinds = ["tip-corners-thick", "tip-centre-thin", "tip-not-separate", "step-abrupt", "heart-sides-thick", "heart-thin", "back-thick", "spine-scraped", "left-right-uneven"];
        foreach (var note in kinds.SelectMany(kind => new[] { ScrapeStyle.LongScrape, ScrapeStyle.ShortScrape }.Select(scrape => TeachingNote.For(new FindingKindId(kind), scrape))))
        {
            var plan = string.Join(' ', note.Plan);

            Assert.True(Regex.IsMatch(plan, "(two|three)( such)? rounds"), plan);
            Assert.True(Regex.IsMatch(plan, "crow it|the crow|crow the reed|high note|low note"), plan);
            Assert.True(plan.IndexOf("plaque out", StringComparison.Ordinal) is var taken && (taken < 0 || plan.IndexOf("the plaque in", StringComparison.Ordinal) is var put && put >= 0 && put < taken), plan);
            Assert.DoesNotMatch("epeat that|do it again|repeat\\|", plan);
            Assert.DoesNotMatch(", (after|within) four at the sides", string.Join(' ', note.Stroke ?? []));
        }
    }

    [Theory]
    [InlineData(null, false)]
    [InlineData(nameof(ReedUse.Practice), false)]
    [InlineData(nameof(ReedUse.Concert), true)]
    public void What_is_not_for_concerts_is_not_sent_to_practice_either(string? use, bool told) => Assert.All(Seeds, seed =>
    {
        var scene = new LetterScene(1, Batch(seed), form =>
        {
            form.Questions = null;
            form.Reeds[0].UsedFor = use;
        })
        { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        Pass(scene, "thin-corners");
        scene.Log(1, Verdict.Of(VerdictKind.AsGoodAsThisCaneGets));

        var letter = LetterComposer.Compose(scene.Material);

        Assert.Equal(told, letter.Blocks.Any(block => block.Kind == BlockKind.ReedUse && Regex.IsMatch(block.Text, "concert|every day|everyday")));
        Assert.Matches("three (easy |gentle |quiet )?days|three days", letter.Blocks.Single(block => block.Kind == BlockKind.Care).Text);
    });

    [Fact]
    public void A_word_of_the_trade_in_the_teachers_words_is_explained_and_the_students_own_is_not()
    {
        var scene = new LetterScene(1, Batch(3), form =>
        {
            form.Questions = null;
            form.Reeds[0].Bothers = "The staple is loose";
        })
        { Thread = LetterThread.Nothing };
        scene.Arrive(1, new ReedArrival(Presence.Here, Damage: "a scuff on the bark, harmless", Fitness: Fitness.Fit));
        scene.Log(1, Test.Of(TestKind.Peep, 0));

        var text = string.Join(' ', LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text));

        Assert.Matches("“bark”[^.]*the (shiny|smooth) skin of the cane", text);
        Assert.DoesNotContain("“staple”", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reed_that_rests_before_a_concert_has_its_first_days_as_any_other()
    {
        var scene = Scene(2);
        Pass(scene, "thin-corners");
        scene.Log(1, Verdict.Of(VerdictKind.Improved, "Let it rest a day before the concert."));

        Assert.Matches("ten minutes", LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Kind == BlockKind.Care).Text);
    }

    private static LetterScene Scene(int seed, string bothers = "It is dull")
    {
        var scene = new LetterScene(1, Batch(seed), form =>
        {
            form.Questions = null;
            form.Reeds[0].Bothers = bothers;
        })
        { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.Peep, 0));
        return scene;
    }

    private static void Pass(LetterScene scene, string kind, Zone? sake = null)
    {
        scene.Log(1, Adjustment.Of(new(kind), new Place(AdjustmentCatalogue.Find(new(kind))!.Zone), new Amount(3), forTheSakeOf: sake));
        scene.Log(1, Test.Of(TestKind.Peep, 0));
    }

    private static Guid Batch(int seed) => new(seed, 19, 19, new byte[8]);

    private static Domain.Pitch.SaidPitch LetterPitch(string text) => LetterScene.Done(Domain.Pitch.SaidPitch.Read(text, Domain.Pitch.Tuning.Standard));

    private static string Story(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Kind == BlockKind.ReedStory).Text;
}
