# Pictures whose file is not on this phone.

photos-missing = { $count ->
    [one] One picture is not on this phone.
   *[other] { $count } pictures are not on this phone.
}
photos-not_here = { $photo }, picture not on this phone
