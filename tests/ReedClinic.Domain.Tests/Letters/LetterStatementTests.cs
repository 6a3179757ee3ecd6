using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Letters.Drafts;
using static ReedClinic.Domain.Tests.Letters.LetterComposerTests;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Words vary and what is said doesn’t; what is said fits the instrument, the lesson and whoever reads it.</summary>
public sealed class LetterStatementTests
{
    private const int Turns = 12;

    private static readonly string[] Taught = ["worn", "side-leak", "tip-corners-thick"];

    private static readonly string[] Parts = ["care", "check", "plan"];

    // What care can speak of, read apart from the program’s own table.
    private static readonly Dictionary<string, string> Topics = new()
    {
        ["soaking"] = "(?i)three to five minutes",
        ["stuffy"] = "stuffy",
        ["shaking"] = "(?i)shake (the water|it)",
        ["drying"] = @"\bhour\b",
        ["heaters"] = "heater",
        ["turns"] = "(?i)take turns|by turns|in turn",
        ["dates"] = "slip",
        ["rinsing"] = "clean longer|cane clean|clogs? the cane",
        ["mouth"] = "mouth",
        ["air"] = "lets air in|little air",
        ["weather"] = "(?i)weather",
        ["holding"] = "by the (cork|thread)",
    };

    [Fact]
    public void In_other_words_every_part_says_the_same_things()
    {
        for (var seed = 1; seed <= 30; seed++)
        {
            var material = InventedBatch.Of(seed).Scene.Material;
            var said = Said(material, 0);

            Assert.True(said.Count > 10);
            Assert.All(Enumerable.Range(1, Turns), asked => Assert.Equal(said, Said(material, asked)));
        }
    }

    [Fact]
    public void Playing_in_and_care_speaks_of_the_same_in_other_words()
    {
        for (var seed = 1; seed <= 12; seed++)
        {
            var material = LetterScene.Usual(new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8])).Material;
            var said = Spoken(Care(material, 0));

            Assert.Superset(new HashSet<string> { "soaking", "stuffy", "shaking", "drying", "heaters" }, said.ToHashSet());
            Assert.Equal(7, said.Count);
            Assert.All(Enumerable.Range(1, Turns), asked => Assert.Equal(said, Spoken(Care(material, asked))));
        }
    }

    [Theory]
    [InlineData("CorAnglais", "instrument|cork", "(?i)on to the crook|by the thread|lower end")]
    [InlineData("OboeDAmore", "instrument|cork", "(?i)on to the crook|by the thread|lower end")]
    [InlineData("Oboe", "crook|lower end", "into the instrument|by the cork|cork end")]
    public void What_is_taught_fits_the_instrument(string instrument, string never, string somewhere)
    {
        var said = new List<string>();
        foreach (var kind in Taught)
        {
            for (var seed = 1; seed <= 8; seed++)
            {
                var scene = new LetterScene(2, new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]), form => form.Instrument = instrument);
                scene.Arrive(1);
                scene.Thread = new LetterThread(new FindingKindId(kind));
                var letter = LetterComposer.Compose(scene.Material);
                said.AddRange(Parts.Select(key => Block(letter, key).Text));
            }
        }

        Assert.All(said, text => Assert.DoesNotMatch(never, text));
        Assert.Contains(said, text => Regex.IsMatch(text, somewhere));
    }

    [Theory]
    [InlineData("tip-not-separate", "Let the line show when you have finished.", "(?i)over the line|join tip|join heart")]
    [InlineData("tip-corners-thick", "Don’t cut the end; leave the length as it is.", "(?i)cut .*off")]
    [InlineData("heart-sides-thick", "Leave the heart alone for now.", "(?i)strokes? (on|left|right)")]
    [InlineData("tip-corners-thick", "Stay away from the corners this time.", "(?i)stroke.*corners|work.*corners")]
    [InlineData("left-right-uneven", "Put the knife away for this week.", "(?i)scrape|stroke|knife")]
    public void A_step_that_says_the_opposite_of_the_lesson_is_left_out(string kind, string lesson, string never)
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var scene = LetterScene.Usual(new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]));
            scene.Thread = new LetterThread(new FindingKindId(kind), lesson);
            var plan = Block(LetterComposer.Compose(scene.Material), "plan");

            Assert.InRange(plan.Paragraphs.Count, 1, TeachingNote.MostSteps);
            Assert.All(plan.Paragraphs, step => Assert.DoesNotMatch(never, step.Text));
        }
    }

    /// <summary>What somebody does, or is asked not to do, is no order.</summary>
    [Theory]
    [InlineData("tip-corners-thick", null, "Perhaps you leave the corners too thick.", "each of the four corners")]
    [InlineData("tip-corners-thick", null, "Perhaps you leave the corners alone.", "each of the four corners")]
    [InlineData("tip-corners-thick", null, "Perhaps you thin the middle and leave the corners thick.", "each of the four corners")]
    [InlineData("tip-corners-thick", null, "Perhaps you never touch the corners.", "each of the four corners")]
    [InlineData("tip-corners-thick", "Don’t leave the corners thick.", null, "each of the four corners")]
    [InlineData("tip-corners-thick", null, "Perhaps you don’t scrape the tip long enough.", "each of the four corners")]
    [InlineData("tip-corners-thick", "Scrape the middle less and leave the corners alone.", null, null)]
    [InlineData("tip-corners-thick", "If it starts late, leave the corners as they are.", null, null)]
    [InlineData("tip-corners-thick", "You should leave the corners alone.", null, null)]
    [InlineData("heart-sides-thick", null, "You leave too much cane in the heart.", "(?i)strokes? (on|left|right|.*either side)")]
    [InlineData("heart-sides-thick", "Do not leave the heart so full.", null, "(?i)strokes? (on|left|right|.*either side)")]
    public void A_step_stays_where_the_habit_only_names_the_fault(string kind, string? lesson, string? habit, string? stays)
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var scene = LetterScene.Usual(new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]));
            scene.Thread = new LetterThread(new FindingKindId(kind), lesson, HabitSentence: habit);
            var plan = Block(LetterComposer.Compose(scene.Material), "plan").Text;

            if (stays is null)
            {
                Assert.DoesNotMatch("each of the four corners", plan);
            }
            else
            {
                Assert.Matches(stays, plan);
            }
        }
    }

    /// <summary>A step names the pitch that this letter holds the crow against, and leaves the cut to the teacher.</summary>
    [Fact]
    public void A_crow_is_lower_than_the_pitch_that_is_named_and_the_teacher_cuts()
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var plan = Block(LetterComposer.Compose(LetterScene.Usual(new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8])).Material), "plan").Paragraphs;

            var step = Assert.Single(plan, step => Regex.IsMatch(step.Text, @"\bcrow\b.*\b(drops|sinks)\b"));
            Assert.Matches(@"(below|lower than) C,", step.Text);
            Assert.Matches("ask your teacher to cut", step.Text);
            Assert.DoesNotMatch("you want it", step.Text);
        }
    }

    [Theory]
    [InlineData(Zone.TipCorners, 1, Blades.Both, Sides.Both, "one stroke on each", "one stroke on each")]
    [InlineData(Zone.TipCorners, 2, Blades.Upper, Sides.Both, "two strokes on each", "two strokes on each")]
    [InlineData(Zone.TipCorners, 1, Blades.Upper, Sides.Left, "one stroke", "1 stroke")]
    [InlineData(Zone.TipCentre, 1, Blades.Both, Sides.Both, "one stroke", "1 stroke")]
    public void Strokes_are_told_so_that_one_can_do_the_same(Zone zone, int strokes, Blades blades, Sides sides, string told, string drawn)
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Adjustment.Of(new(zone == Zone.TipCentre ? "thin-tip-centre" : "thin-corners"), new Place(zone, blades, sides), new Amount(strokes)));
        var letter = LetterComposer.Compose(scene.Material);

        Assert.Contains($"({told}", Block(letter, "reed-1-story").Text, StringComparison.Ordinal);
        Assert.Contains(letter.Reeds[0].Marks, mark => mark.Words.EndsWith(", " + drawn, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("1.5", "an hour and a half")]
    [InlineData("1", "one hour")]
    [InlineData("2.5", "two and a half hours")]
    [InlineData("8", "eight hours")]
    public void How_long_it_was_played_is_told_as_it_was_guessed(string typed, string told)
    {
        var said = Enumerable.Range(1, 40).Select(seed => Story(seed, reed => reed.HoursPlayed = typed)).Where(story => story.Contains("hour", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(said);
        Assert.All(said, story => Assert.Contains(told, story, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Tied", null, @"\b[Yy]ou\b[^.]* wound|you wound|you wind|your (left|right)-handed", "person|maker")]
    [InlineData("Tied", "me", @"\b[Yy]ou\b[^.]* wound|you wound|you wind|your (left|right)-handed", "person|maker")]
    [InlineData("FromABlank", "Myself.", @"\b[Yy]ou\b[^.]* wound|you wound|you wind|your (left|right)-handed", "person|maker")]
    [InlineData("Tied", "a friend", "(left|right)-handed", "person|maker|[Yy]ou (have )?wound|you wind|your (left|right)-handed")]
    [InlineData("FromABlank", null, "(left|right)-handed", "person|maker|[Yy]ou (have )?wound|you wind|your (left|right)-handed")]
    public void Whoever_tied_it_is_not_told_of_as_a_stranger(string made, string? by, string told, string never)
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var story = Story(seed, reed => (reed.MadeHow, reed.TiedBy) = (made, by));

            Assert.Matches(told, story);
            Assert.DoesNotMatch(never, story);
        }
    }

    [Fact]
    public void A_link_in_a_list_stays_with_the_words_it_belongs_to()
    {
        var letter = LetterComposer.Compose(LetterScene.Usual().Material);
        var use = Block(letter, "reed-1-use");

        var edited = use.EditedTo("Play it first.\n\nLong tones with the lamp beside you help most.\n\nhttps://example.org/lamp\n\nLet it rest.", use);

        Assert.Equal(["Play it first.", "Long tones with the lamp beside you help most. https://example.org/lamp", "Let it rest."], edited.Paragraphs.Select(item => item.Text));
        Assert.Equal([null, "https://example.org/lamp", null], edited.Paragraphs.Select(item => Domain.TeachingNotes.NoteLink.AtEnd(edited, item)));
        Assert.Equal(edited.Text, edited.EditedTo(edited.Text, use).Text);
    }

    // How much work is told in one breath hangs on the length of its words; what it was is held to the entries by PartRewritingTests.
    private static List<string> Said(LetterMaterial material, int asked) => [.. LetterComposer.Statements(material, asked).Where(place => !place.EndsWith("-work", StringComparison.Ordinal))];

    private static string Story(int seed, Action<ReedForm> change)
    {
        var scene = new LetterScene(1, new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]), form => change(form.Reeds[0]));
        scene.Arrive(1, new ReedArrival(Presence.Here, null, WindingHand.Right, Overlap.UpperToTheLeft, true, null, Fitness.Fit));
        return Block(LetterComposer.Compose(scene.Material), "reed-1-story").Text;
    }

    private static string Care(LetterMaterial material, int asked) =>
        Block(LetterComposer.Compose(material with { Turns = asked == 0 ? new Dictionary<string, int>() : new Dictionary<string, int> { ["care"] = asked } }), "care").Text;

    private static List<string> Spoken(string care) => [.. Topics.Where(topic => Regex.IsMatch(care, topic.Value)).Select(topic => topic.Key)];
}
