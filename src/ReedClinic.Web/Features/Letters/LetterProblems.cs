using ReedClinic.Web.Shared.Forms;

namespace ReedClinic.Web.Features.Letters;

/// <summary>Where the problems of a letter’s form are shown.</summary>
internal static class LetterProblems
{
    extension(ProblemList problems)
    {
        /// <summary>Whether all of them stand where the letter is sent, so that whoever pressed Send is led there and not to the top.</summary>
        internal bool IsOfSending => problems.Any && problems.All.All(problem => problem.Field is "ReadThrough" or "WhatChanged");
    }
}
