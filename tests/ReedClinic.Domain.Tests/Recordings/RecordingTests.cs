using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Recordings;

public sealed class RecordingTests
{
    private static readonly UploadStamp Stamp = new(
        new RecordingId(new Guid(1, 2, 3, new byte[8])), "0123456789abcdef0123456789abcdef", new AccountId(new Guid(4, 5, 6, new byte[8])), true, 7, DateTimeOffset.UnixEpoch);

    [Theory]
    [InlineData(0, RecordingRefusal.Empty)]
    [InlineData(-1, RecordingRefusal.Empty)]
    [InlineData(25L * 1024 * 1024 + 1, RecordingRefusal.TooLarge)]
    [InlineData(long.MaxValue, RecordingRefusal.TooLarge)]
    public void What_is_too_large_isn_t_begun(long bytes, RecordingRefusal why)
    {
        var refused = Assert.IsType<Outcome<Upload>.Refused>(Upload.Begin(Stamp, Wish(RecordingKind.VoiceMemo, bytes)));

        Assert.Equal([why.Problem(RecordingKind.VoiceMemo)], refused.Problems);
    }

    [Theory]
    [InlineData(null, 7)]
    [InlineData(3, 3)]
    [InlineData(-3, 0)]
    [InlineData(99, 7)]
    public void A_recording_was_made_at_a_place_that_the_log_has(int? said, int expected) =>
        Assert.Equal(expected, Begun(Wish(RecordingKind.VoiceMemo) with { AtSequence = said }).AtSequence);

    [Fact]
    public void Only_a_memo_is_put_into_the_letter()
    {
        var memo = Kept(RecordingKind.VoiceMemo);
        memo.PutInLetter(true);

        Assert.True(memo.InLetter);
        Assert.Throws<InvalidOperationException>(() => Kept(RecordingKind.FinalSound).PutInLetter(true));
    }

    [Fact]
    public void Words_that_can_t_be_taken_leave_those_that_stand()
    {
        var memo = Kept(RecordingKind.VoiceMemo);

        Assert.Empty(memo.Describe(" It answers late. "));
        Assert.Single(memo.Describe(new string('a', RecordingLimits.Words + 1)));
        Assert.Equal("It answers late.", memo.Words);
        Assert.Empty(memo.Describe(""));
        Assert.Null(memo.Words);
    }

    [Fact]
    public void Every_refusal_has_its_own_words_for_sound_and_for_photographs()
    {
        foreach (var kind in Enum.GetValues<RecordingKind>())
        {
            var words = Enum.GetValues<RecordingRefusal>().Select(why => why.Words(kind)).ToList();

            Assert.Equal(words.Count, words.Distinct().Count());
            Assert.All(words, said => Assert.Equal('.', said[^1]));
        }
    }

    [Fact]
    public void Room_ends_with_the_last_file_and_the_last_byte()
    {
        var room = new RecordingRoom(2, 100);

        Assert.True(room.Takes(1, 60, 40));
        Assert.False(room.Takes(2, 0, 1));
        Assert.False(room.Takes(1, 60, 41));
    }

    private static RecordingWish Wish(RecordingKind kind, long bytes = 100) => new(new ReedId(new Guid(7, 8, 9, new byte[8])), kind, bytes);

    private static Upload Begun(RecordingWish wish) => Assert.IsType<Outcome<Upload>.Done>(Upload.Begin(Stamp, wish)).Value;

    private static Recording Kept(RecordingKind kind) =>
        new(Begun(Wish(kind)), new MediaReading.Clean(MediaType.Wav, new byte[10]), new string('a', 64), DateTimeOffset.UnixEpoch);
}
