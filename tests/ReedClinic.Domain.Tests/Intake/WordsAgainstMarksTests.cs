using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Tests.Intake;

/// <summary>A mark on a scale of the intake beside words that say otherwise is asked about.</summary>
public sealed class WordsAgainstMarksTests
{
    [Theory]
    [InlineData("It is too sharp.", -2, null, "flat")]
    [InlineData("It is too sharp.", 1, null, null)]
    [InlineData("It is flat low down, and sharp on top.", -2, null, null)]
    [InlineData("Stiff, and hard to blow.", null, -2, "too easily")]
    [InlineData("Stiff, and hard to blow.", null, 2, null)]
    [InlineData("It never goes flat.", 1, null, null)]
    [InlineData("It is not flat any more.", 1, null, null)]
    [InlineData("It isn’t hard to blow.", null, -2, null)]
    [InlineData("My last reed was flat, this one is not.", 1, null, null)]
    [InlineData("It squeaks.", -1, -1, null)]
    [InlineData("The first note won’t start.", null, 0, "just right")]
    [InlineData("It won't speak", null, 0, "just right")]
    [InlineData("Every start is fuzzy.", null, 0, "just right")]
    [InlineData("It won't speak", null, -1, "a little too easily")]
    [InlineData("It is fuzzy.", null, 1, null)]
    [InlineData("It is not fuzzy any more.", null, 0, null)]
    [InlineData("It is flat.", 0, null, "in tune")]
    [InlineData(null, -1, -1, null)]
    public void A_mark_that_says_the_opposite_of_the_words_is_asked_about(string? bothers, int? pitch, int? response, string? mark)
    {
        static string? Typed(int? value) => value?.ToString(System.Globalization.CultureInfo.InvariantCulture);

        var asked = WordsAgainstMarks.In(new ReedForm { Bothers = bothers, Intonation = Typed(pitch), Response = Typed(response) });

        Assert.Equal(mark, asked.Select(one => one.Mark).SingleOrDefault());
    }

    [Theory]
    [InlineData("It is shrill.", "0", "as I like it")]
    [InlineData("It is shrill.", "1", "a little dull and covered")]
    [InlineData("It sounds thin.", "0", "as I like it")]
    [InlineData("It is shrill.", "-1", null)]
    [InlineData("The low notes come late.", "0", null)]
    public void A_sound_that_is_as_one_likes_it_and_shrill_in_words_is_asked_about(string bothers, string sound, string? mark) =>
        Assert.Equal(mark, WordsAgainstMarks.In(new ReedForm { Bothers = bothers, Sound = sound }).Select(one => one.Mark).SingleOrDefault());
}
