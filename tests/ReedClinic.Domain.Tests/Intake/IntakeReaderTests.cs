using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Intake;

public sealed class IntakeReaderTests
{
    [Fact]
    public void Three_answers_a_reed_are_enough()
    {
        var batch = Done(Form(1));

        var reed = Assert.Single(batch.Reeds);
        Assert.Equal("green thread", reed.HowToRecognise);
        Assert.Equal(Permission.TakeRisks, reed.Permission);
        Assert.Equal(ReedScales.Nothing, reed.Scales);
        Assert.Null(reed.MinutesPlayed);
        Assert.Null(batch.TunesTo);
    }

    [Fact]
    public void Everything_else_is_read_when_it_is_there()
    {
        var form = Form(1);
        form.Instrument = "CorAnglais";
        form.TunesTo = "441,5";
        form.Scrape = "ShortScrape";
        form.Questions = "Which one first?\r\n\r\n  Is my knife sharp enough?  ";
        var reed = form.Reeds[0];
        reed.Intonation = "-2";
        reed.Tiredness = "+1";
        reed.HoursPlayed = "2,5";
        reed.MadeHow = "FromABlank";
        reed.UsedFor = "Concert";
        reed.TiedBy = "my uncle";
        reed.LastTried = "a clip";
        reed.Likes = "the low notes";
        reed.Questions = "Does it need breaking in?";

        var batch = Done(form);

        Assert.Equal(Instrument.CorAnglais, batch.Instrument);
        Assert.Equal(441.5, batch.TunesTo!.Value.A4.Value);
        Assert.Equal(ScrapeStyle.ShortScrape, batch.Scrape);
        Assert.Equal(["Which one first?", "Is my knife sharp enough?"], batch.Questions);
        var read = batch.Reeds[0];
        Assert.Equal(-2, read.Scales[Aspect.Intonation]!.Value.Value);
        Assert.Equal(1, read.Scales[Aspect.Tiredness]!.Value.Value);
        Assert.Null(read.Scales[Aspect.Response]);
        Assert.Equal(150, read.MinutesPlayed);
        Assert.Equal(MadeHow.FromABlank, read.MadeHow);
        Assert.Equal(ReedUse.Concert, read.UsedFor);
        Assert.Equal("Does it need breaking in?", Assert.Single(read.Questions));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(13)]
    [InlineData(200)]
    public void No_reed_or_thirteen_are_refused(int howMany) =>
        Assert.Equal("Reeds", Assert.Single(Refused(Form(howMany))).Field);

    [Fact]
    public void One_to_twelve_reeds_are_taken() =>
        Assert.All(Enumerable.Range(1, 12), howMany => Assert.Equal(howMany, Done(Form(howMany)).Reeds.Count));

    [Theory]
    [InlineData("Why does it squeak? Can I clip it?", 2, false)]
    [InlineData("Why does it squeak?\nwhy does it  squeak??", 1, true)]
    [InlineData("Why does it squeak? Why does it squeak?", 1, true)]
    [InlineData("Should it crow on C? Should it crow on C#?", 2, false)]
    [InlineData("Should it crow on B? Should it crow on B♭?", 2, false)]
    [InlineData("Is 1.5 mm right? Is 15 mm right?", 2, false)]
    [InlineData("Is it at -10 cents? Is it at +10 cents?", 2, false)]
    [InlineData("Is the tip too long? Why? Is the heart too thick? Why?", 2, false)]
    [InlineData("Is the tip too long?\nWhy?\nIs the heart too thick?\nWhy?", 2, false)]
    [InlineData("Why?\nIs the heart too thick?\nAnd why not?", 2, false)]
    [InlineData("Is the tip too long? Or too thick? Is the heart too long? Or too thick?", 2, false)]
    [InlineData("Is it too old? Can I clip it? Is it too old ?", 2, true)]
    [InlineData("Isn't it old?\nIsn’t it old?!", 1, true)]
    [InlineData("", 0, false)]
    public void Two_questions_of_one_line_are_two_and_the_same_one_twice_is_one(string typed, int count, bool isTwice)
    {
        Assert.Equal(count, IntakeReader.QuestionsIn(new IntakeForm { Questions = typed }).Count);
        Assert.Equal(isTwice, IntakeReader.AsksTwice(typed));
    }

    [Fact]
    public void What_leans_on_a_question_stays_with_it_however_often_it_is_asked() =>
        Assert.Equal(["Is the tip too long? Why?", "Is the heart too thick? Why?"], IntakeReader.QuestionsIn(new IntakeForm { Questions = "Is the tip too long? Why? Is the heart too thick? Why?" }));

    [Fact]
    public void An_empty_reed_is_asked_its_three_questions()
    {
        var form = Form(1);
        form.Reeds.Add(new ReedForm());

        Assert.Equal(
            ["Reeds[1].HowToRecognise", "Reeds[1].Bothers", "Reeds[1].Permission"], Refused(form).Select(problem => problem.Field));
    }

    [Theory]
    [InlineData("HoursPlayed", "-1")]
    [InlineData("HoursPlayed", "−3")]
    [InlineData("HoursPlayed", "2001")]
    [InlineData("HoursPlayed", "NaN")]
    [InlineData("HoursPlayed", "lots")]
    [InlineData("Response", "3")]
    [InlineData("Response", "-3")]
    [InlineData("Opening", "wide")]
    [InlineData("MadeHow", "1")]
    [InlineData("MadeHow", "Tied,FromABlank")]
    [InlineData("Permission", "Anything")]
    [InlineData("TiedBy", "two\nlines")]
    [InlineData("Bothers", "a\0b")]
    [InlineData("Bothers", "a\u001b[31m")]
    [InlineData("Likes", "half a pair \ud83d")]
    public void What_cannot_be_taken_is_refused_beside_its_field(string field, string typed)
    {
        var form = Form(1);
        typeof(ReedForm).GetProperty(field)!.SetValue(form.Reeds[0], typed);

        Assert.Equal("Reeds[0]." + field, Assert.Single(Refused(form)).Field);
    }

    [Theory]
    [InlineData("HowToRecognise", IntakeLimits.HowToRecognise)]
    [InlineData("Bothers", IntakeLimits.Bothers)]
    [InlineData("TiedBy", IntakeLimits.TiedBy)]
    [InlineData("LastTried", IntakeLimits.LastTried)]
    [InlineData("Likes", IntakeLimits.Likes)]
    [InlineData("Questions", Question.LongestText)]
    public void A_text_may_be_just_so_long(string field, int longest)
    {
        var form = Form(1);
        var property = typeof(ReedForm).GetProperty(field)!;
        property.SetValue(form.Reeds[0], new string('x', longest));
        Done(form);

        property.SetValue(form.Reeds[0], new string('x', longest + 1));
        Assert.Equal("Reeds[0]." + field, Assert.Single(Refused(form)).Field);
    }

    [Theory]
    [InlineData("TunesTo", "44")]
    [InlineData("TunesTo", "a little above 440")]
    [InlineData("Instrument", "Bagpipe")]
    [InlineData("Scrape", "7")]
    [InlineData("Country", "a\nb")]
    [InlineData("Questions", "1\n2\n3\n4\n5\n6")]
    public void The_answers_for_the_whole_batch_are_checked_too(string field, string typed)
    {
        var form = Form(1);
        typeof(IntakeForm).GetProperty(field)!.SetValue(form, typed);

        Assert.Equal(field, Assert.Single(Refused(form)).Field);
    }

    [Theory]
    [InlineData("about 4", 240)]
    [InlineData("~4", 240)]
    [InlineData("4 h", 240)]
    [InlineData("4-5", 270)]
    [InlineData("4 – 5 hours", 270)]
    [InlineData("2 to 3", 150)]
    [InlineData("maybe 2,5 hrs", 150)]
    [InlineData("20 min", 20)]
    [InlineData("10+", 600)]
    [InlineData("about two", 120)]
    [InlineData("Twelve hours", 720)]
    [InlineData("one to two", 90)]
    [InlineData("two or three hours", 150)]
    [InlineData("an hour", 60)]
    [InlineData("about an hour", 60)]
    [InlineData("half an hour", 30)]
    [InlineData("one and a half hours", 90)]
    [InlineData("an hour and a half", 90)]
    [InlineData("about two hours and a half", 150)]
    [InlineData("ten minutes", 10)]
    public void Hours_may_be_guessed_in_simple_words(string typed, int minutes)
    {
        var form = Form(1);
        form.Reeds[0].HoursPlayed = typed;

        Assert.Equal(minutes, Done(form).Reeds[0].MinutesPlayed);
    }

    [Theory]
    [InlineData("about -4")]
    [InlineData("-4 h")]
    [InlineData("-4-5")]
    [InlineData("4-5-6")]
    [InlineData("4 weeks")]
    [InlineData("two weeks")]
    [InlineData("onetwo")]
    [InlineData("thirteen")]
    [InlineData("and a half")]
    [InlineData("about 2500")]
    [InlineData("1-3000")]
    public void Hours_that_are_no_guess_of_hours_are_refused(string typed)
    {
        var form = Form(1);
        form.Reeds[0].HoursPlayed = typed;

        Assert.Equal("Reeds[0].HoursPlayed", Assert.Single(Refused(form)).Field);
    }

    [Fact]
    public void A_number_that_no_orchestra_tunes_to_is_told_the_range_and_a_word_is_told_something_else()
    {
        var form = Form(1);
        form.TunesTo = "4420";
        var number = Assert.Single(Refused(form)).Message;
        form.TunesTo = "banana";
        var word = Assert.Single(Refused(form)).Message;

        Assert.Contains("380", number, StringComparison.Ordinal);
        Assert.Contains("500", number, StringComparison.Ordinal);
        Assert.NotEqual(number, word);
    }

    [Fact]
    public void A_little_is_a_whole_phrase_on_every_scale()
    {
        var said = AspectWords.All.SelectMany(words => new[] { words.Say(new ScaleMark(-1)), words.Say(new ScaleMark(1)) }).ToArray();

        Assert.Contains("a little flat", said);
        Assert.Contains("not quite enough to blow against", said);
        Assert.All(said, phrase => Assert.DoesNotContain("towards", phrase, StringComparison.Ordinal));
        Assert.Equal(16, said.Distinct().Count());
    }

    [Fact]
    public void Every_scale_has_words_at_both_ends_and_in_the_middle()
    {
        Assert.Equal(Enum.GetValues<Aspect>(), AspectWords.All.Select(words => words.Aspect));
        Assert.All(AspectWords.All, words =>
        {
            Assert.Equal(words, AspectWords.Of(words.Aspect));
            Assert.Equal(5, Enumerable.Range(-2, 5).Select(value => words.Say(new ScaleMark(value))).Distinct().Count());
        });
    }

    [Theory]
    [InlineData("green thread, cork with a dot", "green thread, cork with a dot", true)]
    [InlineData("green thread, cork with a dot", " Green thread  cork with\na dot.", true)]
    [InlineData("green thread, cork with a dot", "green thread, cork with two dots", false)]
    [InlineData("green thread *", "green thread **", false)]
    public void Two_reeds_in_the_same_words_cannot_be_told_apart_and_the_later_one_has_to_say_more(string first, string third, bool alike)
    {
        var form = Form(3);
        form.Reeds[0].HowToRecognise = first;
        form.Reeds[2].HowToRecognise = third;

        if (!alike)
        {
            Assert.Equal(3, Done(form).Reeds.Count);
            return;
        }

        var problem = Assert.Single(Refused(form));
        Assert.Equal("Reeds[2].HowToRecognise", problem.Field);
        Assert.StartsWith("Reed 1 is described in the same words", problem.Message, StringComparison.Ordinal);
    }

    internal static IntakeForm Form(int reeds) => new()
    {
        Reeds =
        [
            .. Enumerable.Range(0, reeds).Select(index => new ReedForm
            {
                HowToRecognise = index == 0 ? "green thread" : FormattableString.Invariant($"green thread, {index} dots"),
                Bothers = "low notes come late",
                Permission = "TakeRisks",
            }),
        ],
    };

    private static AnnouncedBatch Done(IntakeForm form) =>
        Assert.IsType<Outcome<AnnouncedBatch>.Done>(IntakeReader.Read(form)).Value;

    private static IReadOnlyList<Problem> Refused(IntakeForm form) =>
        Assert.IsType<Outcome<AnnouncedBatch>.Refused>(IntakeReader.Read(form)).Problems;
}
