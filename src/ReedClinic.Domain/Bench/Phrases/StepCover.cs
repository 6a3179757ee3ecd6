namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Whether a segment says a step of a test’s scale and nothing else, so that it may stand without the test’s name.</summary>
internal static class StepCover
{
    private static readonly HashSet<string> Anyhow =
    [
        .. ("they it them that those these this the a an and but or so is 's are was were be been being am not now still already again then all of at to in on with for me my i when up down right quite very really just only bit little "
        + "touch much more most far too as deal lot nearly almost better sounds sounding feel feels feeling play plays playing come comes coming go goes going gets got has have had do does did can will one ones time times note notes every each here "
        + "there though although anyway last finally after before that what both two no nothing never perfectly properly nicely well good fine great lovely beautifully exactly completely straight away most mostly rather slightly hair shade tad "
        + "like yes today perhaps maybe think seems somewhat even if because every from without out by any how fairly pretty reasonably ff pp fff ppp forte piano fortissimo pianissimo loud soft begin begins began begun start starts started least its place you anything ever houses wish could rock bell dream charm get once off into").Split(' '),
    ];

    private static readonly Dictionary<TestKind, HashSet<string>> Own = new()
    {
        [TestKind.Crow] = [.. "octave octaves high low top bottom upper lower first both two together join joins joining once underneath growl squeak rattle crow crows crowing start".Split(' ')],
        [TestKind.Effort] = [.. "hard harder easy easier easily free freely light heavy stiff stubborn resistant stuffy blow blows blowing work effort resistance comfortable tough tiring difficult lighter heavier effortless less more".Split(' ')],
        [TestKind.TuningNote] = [.. "flat sharp flatter sharper low high in tune spot bang dead help helping lip lipping any".Split(' ')],
        [TestKind.Opening] = [.. "open closed shut right".Split(' ')],
        [TestKind.Edge] = [.. "covered muffled dull edgy edgier edge edginess bright less".Split(' ')],
    };

    internal static bool IsWhole(Segment segment, TestKind test)
    {
        for (var i = segment.First; i < segment.End; i++)
        {
            var token = segment.Tokens[i];
            if (token.Kind is TokenKind.Number or TokenKind.Note)
            {
                return false;
            }

            if (token.Kind is TokenKind.Word && !Anyhow.Contains(token.Text) && !(Own.TryGetValue(test, out var own) && own.Contains(token.Text)) && !StepWays.Knows(test, token.Text)
                && !segment.Items.Any(item => item.First <= i && i < item.End && item.Cat is Cat.Filler or Cat.Now or Cat.Degree or Cat.Hedge or Cat.Wordy))
            {
                return false;
            }
        }

        return true;
    }
}
